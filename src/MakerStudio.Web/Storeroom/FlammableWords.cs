using MakerStudio.Core.FlashPoints;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Studio;

namespace MakerStudio.Web.Storeroom;

/// <summary>How flammable stock reads.</summary>
public static class FlammableWords
{
    private const decimal MilligramsPerKilogram = 1_000_000m;
    private const decimal MillilitresPerLitre = 1000m;

    public static string Category(FlammableCategory? category) => MarketWords.Category(category);

    /// <summary>Kilograms to the gram.</summary>
    public static string Kilograms(long milligrams) => Written.AsStated(decimal.Round(milligrams / MilligramsPerKilogram, 3));

    /// <summary>Litres to the tenth.</summary>
    public static string Litres(decimal millilitres) => Written.AsStated(decimal.Round(millilitres / MillilitresPerLitre, 1));

    /// <summary>"112 % of 60 L".</summary>
    public static string Standing(FlammableStanding standing) =>
        $"{Written.Percent(standing.Share, 0)} % of {(standing.Litres is { } litres ? $"{Written.AsStated(litres)} L" : $"{Written.AsStated(standing.Kilograms ?? 0)} kg")}";
}
