namespace MakerStudio.Core.Blending;

/// <summary>The relative masses of typed lines, or what stands in the way of knowing them.</summary>
internal sealed record LineMasses(IReadOnlyList<decimal> Values, IReadOnlyList<LineProblem> Problems)
{
    /// <summary>Largest amount taken on a line. Far above any batch, and safe from overflow in sums and products.</summary>
    internal const decimal LargestAmount = 1_000_000_000m;

    /// <summary>Largest mass of a drop taken, mg. Real drops weigh 15 to 70 mg.</summary>
    internal const decimal LargestDropMilligrams = 1_000m;

    private const decimal Whole = 100m;
    private const decimal MilligramsPerGram = 1000m;

    private enum Group
    {
        PartsByWeight,
        PartsByVolume,
        PercentByWeight,
        PercentByVolume,
        OfWax,
        Measured,
    }

    internal static LineMasses Of(IReadOnlyList<TypedLine> lines)
    {
        if (lines.Count == 0)
        {
            return Failed([new(null, "A formula needs at least one line.")]);
        }

        Group[] groups = GroupsOf(lines);
        if (groups.Length > 1)
        {
            return Failed([new(null, $"The lines are typed in different ways: {string.Join(", ", groups.Select(InWords))}. Use one way for the whole formula.")]);
        }

        LineProblem[] problems = lines.SelectMany(line => ProblemsOf(line, groups[0])).ToArray();
        if (problems.Length > 0)
        {
            return Failed(problems);
        }

        return groups[0] switch
        {
            Group.PercentByWeight or Group.PercentByVolume => OfPercents(lines),
            Group.OfWax => WaxMasses.Of(lines),
            _ => OfAmounts(lines, lines.Select(line => line.Amount!.Value).ToArray()),
        };
    }

    internal static LineMasses Failed(IReadOnlyList<LineProblem> problems) => new([], problems);

    /// <summary>Fills in "the rest" of percentages. Null and a problem where they do not come to 100.</summary>
    internal static decimal[]? FillRest(IReadOnlyList<TypedLine> lines, string ofWhat, out LineProblem? problem)
    {
        TypedLine[] rests = lines.Where(line => line.Amount is null).ToArray();
        decimal sum = lines.Sum(line => line.Amount ?? 0);
        problem = (rests.Length, sum) switch
        {
            ( > 1, _) => new(rests[1].LineId, "Only one line can be the rest."),
            (0, not Whole) => new(null, FormattableString.Invariant(
                $"The percentages{ofWhat} come to {sum:0.####}, not 100. Change a line or let one be the rest.")),
            (1, > Whole) => new(rests[0].LineId, FormattableString.Invariant(
                $"The other lines come to {sum:0.####} %, so nothing is left for the rest.")),
            _ => null,
        };
        return problem is null ? lines.Select(line => line.Amount ?? Whole - sum).ToArray() : null;
    }

    private static LineMasses OfPercents(IReadOnlyList<TypedLine> lines) =>
        FillRest(lines, "", out LineProblem? problem) is { } amounts ? OfAmounts(lines, amounts) : Failed([problem!]);

    private static LineMasses OfAmounts(IReadOnlyList<TypedLine> lines, decimal[] amounts)
    {
        decimal[] masses = lines.Select((line, i) => amounts[i] * MassPerUnit(line)).ToArray();
        return masses.Sum() > 0
            ? new(masses, [])
            : Failed([new(null, "All lines are zero. Give at least one an amount.")]);
    }

    private static decimal MassPerUnit(TypedLine line) => line.Basis switch
    {
        LineBasis.PartsByVolume or LineBasis.PercentByVolume or LineBasis.Millilitres => line.Density!.Value.GramsPerMillilitre,
        LineBasis.Drops => line.DropMassMilligrams!.Value / MilligramsPerGram,
        _ => 1m,
    };

    private static Group[] GroupsOf(IReadOnlyList<TypedLine> lines)
    {
        bool ofWax = lines.Any(line => line.Basis == LineBasis.PercentOfWax);
        return lines.Select(line => ofWax && line is { IsWax: true, Basis: LineBasis.PartsByWeight }
            ? Group.OfWax
            : GroupOf(line.Basis)).Distinct().Order().ToArray();
    }

    private static Group GroupOf(LineBasis basis) => basis switch
    {
        LineBasis.PartsByWeight => Group.PartsByWeight,
        LineBasis.PartsByVolume => Group.PartsByVolume,
        LineBasis.PercentByWeight => Group.PercentByWeight,
        LineBasis.PercentByVolume => Group.PercentByVolume,
        LineBasis.PercentOfWax => Group.OfWax,
        _ => Group.Measured,
    };

    private static string InWords(Group group) => group switch
    {
        Group.PartsByWeight => "parts by weight",
        Group.PartsByVolume => "parts by volume",
        Group.PercentByWeight => "% by weight",
        Group.PercentByVolume => "% by volume",
        Group.OfWax => "% of wax",
        _ => "g, mL or drops",
    };

    private static IEnumerable<LineProblem> ProblemsOf(TypedLine line, Group group)
    {
        bool mayBeRest = group is Group.PercentByWeight or Group.PercentByVolume
            || (group == Group.OfWax && line is { IsWax: true, Basis: LineBasis.PercentOfWax });
        if (line.Amount is null && !mayBeRest)
        {
            yield return new(line.LineId, "Give this line an amount. Only a line in % of the whole can be the rest.");
        }

        if (line.Amount is < 0)
        {
            yield return new(line.LineId, "An amount cannot be below zero.");
        }

        if (line.Amount is > LargestAmount)
        {
            yield return new(line.LineId, "This amount is too large.");
        }

        bool byVolume = line.Basis is LineBasis.PartsByVolume or LineBasis.PercentByVolume or LineBasis.Millilitres;
        if (byVolume && line.Density is null)
        {
            yield return new(line.LineId, "Typed by volume, and no density is known. Give the material a density or type by weight.");
        }

        if (line.Basis == LineBasis.Drops && line.DropMassMilligrams is not (> 0 and <= LargestDropMilligrams))
        {
            yield return new(line.LineId, "A drop has no fixed mass. Weigh 20 drops of this material first.");
        }
    }
}
