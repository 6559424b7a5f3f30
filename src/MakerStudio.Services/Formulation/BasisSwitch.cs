using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;

namespace MakerStudio.Services.Formulation;

/// <summary>What comes of typing the same formula in another way.</summary>
public abstract record BasisSwitch
{
    /// <summary>The same formula, said exactly in the new way.</summary>
    public sealed record Same(IReadOnlyList<LineRow> Lines) : BasisSwitch;

    /// <summary>The new way cannot say it exactly with the decimals kept.</summary>
    /// <param name="Nearest">Nearly the same, to two decimals; null where a density is missing.</param>
    /// <param name="AsTyped">The typed numbers as they are, read in the new way: another formula.</param>
    public sealed record NotExact(string Why, IReadOnlyList<LineRow>? Nearest, IReadOnlyList<LineRow> AsTyped) : BasisSwitch;

    private const int Decimals = 4;
    private const int NearestDecimals = 2;

    /// <summary>Turns every line to a basis. Lines that do not add up yet keep their numbers.</summary>
    public static BasisSwitch To(LineBasis basis, IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        var asTyped = lines.Select(l => l with { Basis = basis }).ToArray();
        var before = Shares(lines, materials);
        if (before is null)
        {
            return new Same(asTyped);
        }

        if (Amounts(basis, lines, before, materials) is not { } amounts)
        {
            return new NotExact(
                "Said by volume, every material needs a density, and one is missing.", null, asTyped);
        }

        var exact = Rounded(basis, lines, amounts, Decimals);
        if (Shares(exact, materials) is { } after && after.SequenceEqual(before))
        {
            return new Same(exact);
        }

        var nearest = Rounded(basis, lines, amounts, NearestDecimals);
        return new NotExact("These amounts do not come out even in the new way.", Shares(nearest, materials) is null ? null : nearest, asTyped);
    }

    private static decimal[]? Shares(IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        Core.Blending.Formulation.Normalise([.. lines.Select(l => Worked.Typed(l, materials))]) is FormulationResult.Normalised normalised
            ? [.. normalised.Lines.Select(l => l.Fraction)]
            : null;

    /// <summary>Unrounded amounts in the new basis; null where a density is missing.</summary>
    private static decimal[]? Amounts(LineBasis basis, IReadOnlyList<LineRow> lines, decimal[] shares, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        var weights = shares;
        if (basis is LineBasis.PartsByVolume or LineBasis.PercentByVolume or LineBasis.Millilitres)
        {
            if (lines.Any(l => materials[l.MaterialId].DensityKnown is null))
            {
                return null;
            }

            weights = [.. lines.Select((l, i) => shares[i] / materials[l.MaterialId].DensityKnown!.Value.GramsPerMillilitre)];
        }

        var whole = basis switch
        {
            LineBasis.PartsByWeight or LineBasis.PartsByVolume => weights.Where(w => w > 0).Min(),
            LineBasis.PercentOfWax => WaxOf(lines, weights, materials),
            LineBasis.Grams or LineBasis.Millilitres => weights.Sum() / Total(basis, lines, materials),
            _ => weights.Sum(),
        };
        var scale = basis is LineBasis.PercentByWeight or LineBasis.PercentByVolume or LineBasis.PercentOfWax ? 100m : 1m;
        return whole > 0 ? [.. weights.Select(w => w / whole * scale)] : null;
    }

    private static decimal WaxOf(IReadOnlyList<LineRow> lines, decimal[] weights, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        lines.Select((l, i) => materials[l.MaterialId].Kind == MaterialKind.Wax ? weights[i] : 0m).Sum();

    /// <summary>What was measured keeps its size; anything else becomes a hundred.</summary>
    private static decimal Total(LineBasis to, IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        if (!lines.All(l => l.Basis is LineBasis.Grams or LineBasis.Millilitres or LineBasis.Drops))
        {
            return 100m;
        }

        var masses = lines.Select(l => (Mass: (l.Amount ?? 0) * GramsPerUnit(l, materials[l.MaterialId]), materials[l.MaterialId].DensityKnown));
        return to == LineBasis.Grams
            ? masses.Sum(m => m.Mass)
            : masses.Sum(m => m.Mass / m.DensityKnown!.Value.GramsPerMillilitre);
    }

    private static decimal GramsPerUnit(LineRow line, LineMaterial material) => line.Basis switch
    {
        LineBasis.Millilitres => material.DensityKnown!.Value.GramsPerMillilitre,
        LineBasis.Drops => material.DropMilligrams!.Value / 1000m,
        _ => 1m,
    };

    /// <summary>A line that was the rest stays the rest where the new basis knows one; where none was, rounding needs one.</summary>
    private static LineRow[] Rounded(LineBasis basis, IReadOnlyList<LineRow> lines, decimal[] amounts, int decimals)
    {
        var rounded = lines.Select((l, i) => l with
        {
            Basis = basis,
            Amount = l.Amount is null && KnowsRest(basis) ? null : Plain(decimal.Round(amounts[i], decimals, MidpointRounding.AwayFromZero)),
        }).ToArray();
        var percents = basis is LineBasis.PercentByWeight or LineBasis.PercentByVolume;
        if (percents && rounded.All(l => l.Amount is not null) && rounded.Sum(l => l.Amount) != 100m)
        {
            var largest = Enumerable.Range(0, rounded.Length).MaxBy(i => amounts[i]);
            rounded[largest] = rounded[largest] with { Amount = null };
        }

        return rounded;
    }

    private static bool KnowsRest(LineBasis basis) => basis is LineBasis.PercentByWeight or LineBasis.PercentByVolume;

    /// <summary>Without zeros at the end.</summary>
    private static decimal Plain(decimal value) => value / 1.0000000000000000000000000000m;
}
