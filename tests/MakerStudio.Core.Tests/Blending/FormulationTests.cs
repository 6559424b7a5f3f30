using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Blending;

public class FormulationTests
{
    private static readonly Density Alcohol = new(0.79m);
    private static readonly Density Oil = new(0.98m);

    [Fact]
    public void Normalise_OneToOneAndAHalfByWeight_IsFortyToSixty() => AssertPercents(
        [Line(1, LineBasis.PartsByWeight), Line(1.5m, LineBasis.PartsByWeight)], 40.00m, 60.00m);

    [Fact]
    public void Normalise_OneToOneAndAHalfByVolume_UsesTheDensities() => AssertPercents(
        [Line(1, LineBasis.PartsByVolume, Alcohol), Line(1.5m, LineBasis.PartsByVolume, Oil)], 34.96m, 65.04m);

    [Fact]
    public void Normalise_PercentByVolume_UsesTheDensities() => AssertPercents(
        [Line(40, LineBasis.PercentByVolume, Alcohol), Line(null, LineBasis.PercentByVolume, Oil)], 34.96m, 65.04m);

    [Fact]
    public void Normalise_FigV3_LetsTheAlcoholBeTheRest() => AssertPercents(
        [Line(12, LineBasis.PercentByWeight), Line(5, LineBasis.PercentByWeight), Line(null, LineBasis.PercentByWeight)],
        12.00m, 5.00m, 83.00m);

    /// <summary>trade arithmetic: a = 8 % of wax is b = a/(1+a) = 7.41 % of the total; 180.0 g splits 166.67 and 13.33.</summary>
    [Fact]
    public void Normalise_EightPercentOfWax_IsAnEighthOfTwentySevenOfTheTotal()
    {
        IReadOnlyList<NormalisedLine> lines = AssertPercents(
            [Line(1, LineBasis.PartsByWeight, isWax: true), Line(8, LineBasis.PercentOfWax)], 92.59m, 7.41m);
        IReadOnlyList<Mass> masses = Scaling.Split(Mass.FromGrams(180), lines.Select(line => line.Fraction).ToArray());
        Assert.Equal([166_667, 13_333], masses.Select(mass => mass.Milligrams));
    }

    [Fact]
    public void Normalise_TwoWaxesInParts_ShareTheWaxAmongThemselves() => AssertPercents(
        [Line(3, LineBasis.PartsByWeight, isWax: true), Line(1, LineBasis.PartsByWeight, isWax: true), Line(25, LineBasis.PercentOfWax)],
        60.00m, 20.00m, 20.00m);

    [Fact]
    public void Normalise_OneWaxAsTheRestOfTheWax_IsAllTheWax() => AssertPercents(
        [Line(null, LineBasis.PercentOfWax, isWax: true), Line(25, LineBasis.PercentOfWax)], 80.00m, 20.00m);

    /// <summary>10 g + 10 mL × 0.79 + 20 drops × 25 mg = 10 + 7.9 + 0.5 = 18.4 g.</summary>
    [Fact]
    public void Normalise_MeasuredTrial_MixesGramsMillilitresAndDrops() => AssertPercents(
        [
            Line(10, LineBasis.Grams), Line(10, LineBasis.Millilitres, Alcohol),
            Line(20, LineBasis.Drops) with { DropMassMilligrams = 25 },
        ],
        54.35m, 42.93m, 2.72m);

    [Fact]
    public void Normalise_ThreeEqualLines_ShowsAnExactHundred()
    {
        IReadOnlyList<NormalisedLine> lines = Normalised(
            [Line(1, LineBasis.PartsByWeight), Line(1, LineBasis.PartsByWeight), Line(1, LineBasis.PartsByWeight)]);
        Assert.Equal(100.00m, lines.Sum(line => line.PercentShown));
        Assert.Equal(1m, lines.Sum(line => line.Fraction));
        Assert.Equal([33.33m, 33.33m, 33.34m], lines.Select(line => line.PercentShown).Order());
    }

    [Fact]
    public void Normalise_EqualLinesInAnotherOrder_KeepTheirShares()
    {
        TypedLine[] lines = [.. Enumerable.Range(1, 3).Select(i => new TypedLine(
            new Guid(i, 0, 0, new byte[8]), 1, LineBasis.PartsByWeight))];
        TypedLine[] backwards = [.. lines.Reverse()];
        Assert.Equal(Normalised(lines), Normalised(backwards).Reverse());
    }

    [Fact]
    public void Normalise_OffAHundred_SaysWhatTheyComeTo()
    {
        LineProblem problem = Assert.Single(Problems([Line(12, LineBasis.PercentByWeight), Line(87.5m, LineBasis.PercentByWeight)]));
        Assert.Null(problem.LineId);
        Assert.Contains("99.5", problem.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Normalise_TwoRests_NamesTheSecond()
    {
        TypedLine[] lines = [Line(12, LineBasis.PercentByWeight), Line(null, LineBasis.PercentByWeight), Line(null, LineBasis.PercentByWeight)];
        LineProblem problem = Assert.Single(Problems(lines));
        Assert.Contains(lines, line => line.LineId == problem.LineId && line.Amount is null);
    }

    [Fact]
    public void Normalise_RestBelowNothing_NamesTheRest()
    {
        TypedLine rest = Line(null, LineBasis.PercentByWeight);
        Assert.Equal(rest.LineId, Assert.Single(Problems([Line(101, LineBasis.PercentByWeight), rest])).LineId);
    }

    [Fact]
    public void Normalise_ByVolumeWithoutDensity_NamesTheLine()
    {
        TypedLine bare = Line(1.5m, LineBasis.PartsByVolume);
        LineProblem problem = Assert.Single(Problems([Line(1, LineBasis.PartsByVolume, Alcohol), bare]));
        Assert.Equal(bare.LineId, problem.LineId);
        Assert.Contains("density", problem.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Normalise_MixedWays_NamesBoth()
    {
        string problem = Assert.Single(Problems([Line(1, LineBasis.PartsByWeight), Line(50, LineBasis.PercentByWeight)])).Problem;
        Assert.Contains("parts by weight", problem, StringComparison.Ordinal);
        Assert.Contains("% by weight", problem, StringComparison.Ordinal);
    }

    public static TheoryData<string, TypedLine[]> Unusable => new()
    {
        { "nothing", [] },
        { "all zero", [Line(0, LineBasis.PartsByWeight), Line(0, LineBasis.PartsByWeight)] },
        { "below zero", [Line(2, LineBasis.PartsByWeight), Line(-1, LineBasis.PartsByWeight)] },
        { "rest among parts", [Line(2, LineBasis.PartsByWeight), Line(null, LineBasis.PartsByWeight)] },
        { "huge", [Line(decimal.MaxValue, LineBasis.PartsByWeight), Line(decimal.MaxValue, LineBasis.PartsByWeight)] },
        { "huge of wax", [Line(1, LineBasis.PartsByWeight, isWax: true), Line(decimal.MaxValue, LineBasis.PercentOfWax)] },
        { "uncalibrated drops", [Line(10, LineBasis.Grams), Line(20, LineBasis.Drops)] },
        { "impossible drops", [Line(10, LineBasis.Grams), Line(20, LineBasis.Drops) with { DropMassMilligrams = decimal.MaxValue }] },
        { "no wax", [Line(8, LineBasis.PercentOfWax)] },
        { "wax in two ways", [Line(1, LineBasis.PartsByWeight, isWax: true), Line(50, LineBasis.PercentOfWax, isWax: true)] },
        { "zero wax", [Line(0, LineBasis.PartsByWeight, isWax: true), Line(8, LineBasis.PercentOfWax)] },
        { "addition in parts beside % of wax", [Line(1, LineBasis.PartsByWeight, isWax: true), Line(8, LineBasis.PercentOfWax), Line(1, LineBasis.PartsByWeight)] },
        { "addition as rest of wax", [Line(1, LineBasis.PartsByWeight, isWax: true), Line(null, LineBasis.PercentOfWax)] },
    };

    [Theory]
    [MemberData(nameof(Unusable))]
    public void Normalise_Unusable_IsAProblemNotAThrow(string what, TypedLine[] lines) =>
        Assert.True(Problems(lines).Count > 0, what);

    [Fact]
    public void Normalise_OneIdTwice_IsABug()
    {
        TypedLine line = Line(1, LineBasis.PartsByWeight);
        Assert.Throws<ArgumentException>(() => Formulation.Normalise([line, line]));
    }

    private static TypedLine Line(decimal? amount, LineBasis basis, Density? density = null, bool isWax = false) =>
        new(Guid.CreateVersion7(), amount, basis, density, isWax);

    private static IReadOnlyList<NormalisedLine> Normalised(TypedLine[] lines) =>
        Assert.IsType<FormulationResult.Normalised>(Formulation.Normalise(lines)).Lines;

    private static IReadOnlyList<LineProblem> Problems(TypedLine[] lines) =>
        Assert.IsType<FormulationResult.CannotNormalise>(Formulation.Normalise(lines)).Problems;

    private static IReadOnlyList<NormalisedLine> AssertPercents(TypedLine[] lines, params decimal[] percents)
    {
        IReadOnlyList<NormalisedLine> normalised = Normalised(lines);
        Assert.Equal(percents, normalised.Select(line => line.PercentShown));
        Assert.Equal(lines.Select(line => line.LineId), normalised.Select(line => line.LineId));
        return normalised;
    }
}
