using System.Globalization;

namespace MakerStudio.Core.Tests;

/// <summary>Decimals in test data: attributes cannot hold them.</summary>
internal static class Numbers
{
    public static decimal Of(string text) => decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
