using System.Globalization;
using FluentValidation;

namespace MakerStudio.Services.Accounts;

/// <summary>What a time zone, a culture and a currency are, and which there are to choose from.</summary>
public static class SettingRules
{
    /// <summary>Every region's culture, by its English name.</summary>
    public static IReadOnlyList<CultureInfo> Cultures { get; } =
        [.. CultureInfo.GetCultures(CultureTypes.SpecificCultures).Where(c => c.Name.Length > 0).OrderBy(c => c.EnglishName, StringComparer.Ordinal)];

    /// <summary>ISO 4217 codes of the regions' present currencies.</summary>
    public static IReadOnlyList<string> Currencies { get; } =
        [.. Cultures.Where(c => c.Name.Contains('-', StringComparison.Ordinal)).Select(c => new RegionInfo(c.Name).ISOCurrencySymbol)
            .Where(code => code.Length == 3 && code.All(char.IsAsciiLetterUpper)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>IANA names.</summary>
    public static IReadOnlyList<string> TimeZones { get; } =
        [.. TimeZoneInfo.GetSystemTimeZones().Where(z => z.HasIanaId).Select(z => z.Id).Order(StringComparer.Ordinal)];

    internal static IRuleBuilderOptions<T, string> IsTimeZone<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(z => TimeZoneInfo.TryFindSystemTimeZoneById(z, out _)).WithMessage("This time zone is not known, for example Europe/Berlin.");

    internal static IRuleBuilderOptions<T, string> IsCulture<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(IsCulture).WithMessage("This language and region is not known, for example en-IE.");

    internal static IRuleBuilderOptions<T, string> IsCurrency<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(c => Currencies.Contains(c)).WithMessage("This currency is not known. Type its three-letter code, for example EUR.");

    private static bool IsCulture(string name)
    {
        try
        {
            return name.Length > 0 && !CultureInfo.GetCultureInfo(name, predefinedOnly: true).IsNeutralCulture;
        }
        catch (CultureNotFoundException)
        {
            return false;
        }
    }
}
