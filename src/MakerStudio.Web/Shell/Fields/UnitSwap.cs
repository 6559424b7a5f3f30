using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Shell.Fields;

/// <summary>A typed amount said in the unit the field shows.</summary>
public static class UnitSwap
{
    /// <summary>Exact, unrounded; null when the units do not meet or a density is missing.</summary>
    public static decimal? Into(decimal value, AmountUnit? typed, AmountUnit? shown, Density? density)
    {
        if (typed is not { } from || shown is not { } to || AmountUnits.IsCount(from) != AmountUnits.IsCount(to))
        {
            return null;
        }

        var amount = value * AmountUnits.Factor(from);
        if (AmountUnits.IsVolume(from) != AmountUnits.IsVolume(to))
        {
            if (density is not { } known)
            {
                return null;
            }

            amount = AmountUnits.IsVolume(from) ? amount * known.GramsPerMillilitre : amount / known.GramsPerMillilitre;
        }

        return Trim(amount / AmountUnits.Factor(to));
    }

    public static string WhyNot(string typed, string? shown) => (AmountUnits.Parse(typed), AmountUnits.Parse(shown)) switch
    {
        (_, _) when shown is null => $"Only a number goes here, without “{typed}”.",
        ({ } a, { } b) when AmountUnits.IsVolume(a) != AmountUnits.IsVolume(b) && !AmountUnits.IsCount(a) && !AmountUnits.IsCount(b) =>
            $"{typed} into {shown} needs the density, and none is known here. Type it in {shown}.",
        _ => $"This field is in {shown}; {typed} does not fit. Type it in {shown}.",
    };

    // Division leaves trailing zeros that nobody typed.
    private static decimal Trim(decimal value) => value / 1.0000000000000000000000000000m;
}
