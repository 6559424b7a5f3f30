using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Voc;
using MakerStudio.Services.Accounts;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Studio;

/// <summary>How the choices of where the studio sells read.</summary>
public static class MarketWords
{
    /// <summary>Said once on every page where these are shown or chosen.</summary>
    public const string Draft = "Everything worked out from these choices is a working draft, to be checked against current local law by a competent person.";

    public static string Scheme(LabelScheme? scheme) => scheme switch
    {
        LabelScheme.EuropeanUnion => "EU and Northern Ireland (CLP)",
        LabelScheme.GreatBritain => "Great Britain (GB CLP)",
        LabelScheme.UnitedStates => "United States (FHSA, FPLA)",
        _ => "not chosen yet",
    };

    public static string Ufi(UfiEntity? entity) => entity switch
    {
        UfiEntity.CompanyKey => "company key",
        UfiEntity.Germany => "German VAT number",
        UfiEntity.Belgium => "Belgian VAT number",
        UfiEntity.UnitedKingdom => "British VAT number",
        _ => "none",
    };

    public static string Category(FlammableCategory? category) => category switch
    {
        FlammableCategory.Category1 => "Flam. Liq. 1",
        FlammableCategory.Category2 => "Flam. Liq. 2",
        FlammableCategory.Category3 => "Flam. Liq. 3",
        FlammableCategory.Category4 => "Flam. Liq. 4 (not in the EU)",
        FlammableCategory.NotClassified => "not flammable liquids",
        _ => "class not known",
    };

    /// <summary>"Flam. Liq. 1, 2 and 3".</summary>
    public static string Counts(IEnumerable<FlammableCategory> counts)
    {
        string[] numbers = [.. counts.Where(c => c <= FlammableCategory.Category4).Order().Select(c => Written.Count((int)c + 1))];
        return numbers.Length < 2 ? $"Flam. Liq. {string.Concat(numbers)}" : $"Flam. Liq. {string.Join(", ", numbers[..^1])} and {numbers[^1]}";
    }

    public static string Most(FlammableLimitLine line) => $"{(line.Most is { } most ? Written.AsStated(most) : "–")} {(line.Measure == FlammableMeasure.Litres ? "L" : "kg")}";

    /// <summary>The figure in force on a day, or that it has ended.</summary>
    public static string In(VocLimit limit, DateOnly day) => limit.On(day) is { } step ? $"{Written.AsStated(step.Percent)} %" : "not in force";
}
