namespace MakerStudio.Core.Quantities;

/// <summary>How a field reads what is typed into it.</summary>
/// <param name="DecimalMark">'.' or ','. Both marks are read; this one decides "1,234".</param>
/// <param name="ShownUnit">
/// The unit standing in the field, in words of <see cref="UnitWords"/>. A bare "%" or "parts" is taken as this unit
/// when it is one of that family.
/// </param>
/// <param name="MaxDecimals">Decimals kept, 0 to 28. More are refused, never rounded away.</param>
/// <param name="Largest">Largest value taken, in the typed unit.</param>
public sealed record QuantityTextOptions(
    char DecimalMark = '.',
    string? ShownUnit = null,
    int MaxDecimals = 3,
    bool AllowNegative = false,
    bool AllowZero = true,
    decimal Largest = 1_000_000_000m);

/// <summary>What a typed quantity was understood to say.</summary>
public abstract record QuantityReading
{
    /// <param name="Value">Exactly what was typed.</param>
    /// <param name="Unit">The unit named, in the words of <see cref="UnitWords"/>; null when none was typed.</param>
    /// <param name="Interpretation">A sentence to show when the text could have meant something else; otherwise null.</param>
    public sealed record Read(decimal Value, string? Unit, string? Interpretation = null) : QuantityReading
    {
        /// <summary>The named unit as an amount unit, or null when none was typed or it is no amount (a %, drops).</summary>
        public AmountUnit? AmountUnit => AmountUnits.Parse(Unit);
    }

    /// <summary>The number is clear, its unit is not. Each choice is a unit of <see cref="UnitWords"/>.</summary>
    public sealed record Asks(string Question, IReadOnlyList<string> Choices, decimal Value) : QuantityReading;

    /// <summary>Cannot be read; the sentence says what would help.</summary>
    public sealed record Unreadable(string Why) : QuantityReading;
}

/// <summary>The words for units that may stand behind a number, apart from the symbols of <see cref="AmountUnits"/>.</summary>
public static class UnitWords
{
    public const string PercentByWeight = "% w/w";
    public const string PercentByVolume = "% v/v";
    public const string PercentOfWax = "% of wax";
    public const string PartsByWeight = "parts by weight";
    public const string PartsByVolume = "parts by volume";
    public const string Drops = "drops";
    public const string UsProof = "US proof";

    private static readonly Dictionary<string, string> ByToken = new(StringComparer.OrdinalIgnoreCase)
    {
        ["% w/w"] = PercentByWeight, ["% by weight"] = PercentByWeight, ["% wt"] = PercentByWeight,
        ["% v/v"] = PercentByVolume, ["% by volume"] = PercentByVolume, ["% vol"] = PercentByVolume, ["% abv"] = PercentByVolume,
        ["% of wax"] = PercentOfWax,
        ["parts by weight"] = PartsByWeight, ["part by weight"] = PartsByWeight,
        ["parts by volume"] = PartsByVolume, ["part by volume"] = PartsByVolume,
        ["drop"] = Drops, ["drops"] = Drops,
        ["US proof"] = UsProof,
    };

    /// <summary>The one spelling of a unit token, or null when it is not known or not clear.</summary>
    public static string? Find(string token)
    {
        if (AmountUnits.TryParse(token, out AmountUnit? unit))
        {
            return AmountUnits.Symbol(unit.Value);
        }

        string spaced = token.StartsWith('%') ? "% " + token[1..].TrimStart() : token;
        return ByToken.GetValueOrDefault(spaced);
    }

    /// <summary>The question a token raises when it could mean several units, or null when it raises none.</summary>
    internal static (string Question, string[] Choices)? Question(string token) => token.ToUpperInvariant().TrimEnd('.') switch
    {
        "OZ" or "OUNCE" or "OUNCES" => (
            "Which ounce? One weighs 28.35 g; the fluid ones hold 29.57 mL (US) or 28.41 mL (imperial).",
            [AmountUnits.Symbol(AmountUnit.OunceWeight), AmountUnits.Symbol(AmountUnit.FluidOunceUs), AmountUnits.Symbol(AmountUnit.FluidOunceImperial)]),
        "FL OZ" or "FLUID OUNCE" or "FLUID OUNCES" => (
            "Which fluid ounce? The US one holds 29.57 mL, the imperial one 28.41 mL.",
            [AmountUnits.Symbol(AmountUnit.FluidOunceUs), AmountUnits.Symbol(AmountUnit.FluidOunceImperial)]),
        "PROOF" or "% PROOF" or "%PROOF" => (
            "Is that US proof (twice the % by volume) or % by volume? 90 US proof is 45 % by volume.",
            [UsProof, PercentByVolume]),
        "%" => ("Per cent of what?", [PercentByWeight, PercentByVolume, PercentOfWax]),
        "PART" or "PARTS" => ("Parts by weight or by volume?", [PartsByWeight, PartsByVolume]),
        _ => null,
    };

    /// <summary>Whether a bare "%" or "parts" may be taken as the unit that stands in the field.</summary>
    internal static bool IsAnsweredBy(string token, string? shownUnit) => shownUnit is not null && token switch
    {
        "%" => shownUnit.StartsWith('%'),
        _ when token.StartsWith("part", StringComparison.OrdinalIgnoreCase) => shownUnit.StartsWith("parts", StringComparison.Ordinal),
        _ => false,
    };
}
