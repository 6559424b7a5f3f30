namespace MakerStudio.Core.Blending;

/// <summary>
/// Relative masses where additions are typed as % of the wax: the wax counts as 1, an addition of a per cent as
/// a/100. An addition's share of the total is then b = a / (1 + Σa).
/// </summary>
internal static class WaxMasses
{
    private const decimal Whole = 100m;

    internal static LineMasses Of(IReadOnlyList<TypedLine> lines)
    {
        TypedLine[] waxes = lines.Where(line => line.IsWax).ToArray();
        if (waxes.Length == 0)
        {
            return LineMasses.Failed([new(null, "The lines are typed as % of wax, and no line is a wax.")]);
        }

        if (waxes.Select(wax => wax.Basis).Distinct().Count() > 1)
        {
            return LineMasses.Failed([new(null, "Type the waxes all in parts by weight or all in % of wax.")]);
        }

        if (WaxShares(waxes, out LineProblem? problem) is not { } shares)
        {
            return LineMasses.Failed([problem!]);
        }

        return new(lines.Select(line => line.IsWax ? shares[line.LineId] : line.Amount!.Value / Whole).ToArray(), []);
    }

    /// <summary>Each wax's share of the wax, summing to 1.</summary>
    private static Dictionary<Guid, decimal>? WaxShares(TypedLine[] waxes, out LineProblem? problem)
    {
        decimal[]? amounts;
        if (waxes[0].Basis == LineBasis.PercentOfWax)
        {
            amounts = LineMasses.FillRest(waxes, " of the waxes", out problem);
        }
        else
        {
            amounts = waxes.Select(wax => wax.Amount!.Value).ToArray();
            problem = amounts.Sum() > 0 ? null : new(null, "All waxes are zero. Give at least one an amount.");
        }

        return problem is not null
            ? null
            : waxes.Zip(amounts!).ToDictionary(pair => pair.First.LineId, pair => pair.Second / amounts!.Sum());
    }
}
