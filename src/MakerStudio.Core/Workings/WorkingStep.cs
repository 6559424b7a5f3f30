using System.Globalization;

namespace MakerStudio.Core.Workings;

/// <summary>One step of how a result came about, for a page that opens it: the line, the rule and the source.</summary>
/// <param name="Rule">The rule by name, as its page in docs/science calls it.</param>
/// <param name="Saying">What the rule did with which figures. Written out in the reader's culture by <see cref="Says"/>.</param>
/// <param name="LineId">The formula line it is about, or null where it is about the whole.</param>
public sealed record WorkingStep(string Rule, FormattableString Saying, Source Source, Guid? LineId = null)
{
    public string Says(CultureInfo culture) => Saying.ToString(culture);

    public override string ToString() => $"{Rule}: {Says(CultureInfo.InvariantCulture)}";
}
