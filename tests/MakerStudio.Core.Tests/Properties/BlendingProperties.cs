using CsCheck;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Properties;

public class BlendingProperties
{
    private static readonly Gen<decimal> Parts = Gen.Int[1, 1_000_000].Select(thousandths => thousandths / 1000m);

    private static readonly Gen<TypedLine[]> ByWeightOrVolume = Gen.Select(
        Gen.Bool,
        Gen.Select(Gen.Guid, Parts, Gen.Int[100, 5000]).Array[1, 30],
        (byVolume, lines) => lines.DistinctBy(line => line.Item1).Select(line => new TypedLine(
            line.Item1,
            line.Item2,
            byVolume ? LineBasis.PartsByVolume : LineBasis.PartsByWeight,
            new Density(line.Item3 / 1000m))).ToArray());

    [Fact]
    public void Normalise_AnyParts_SumsExactly() => ByWeightOrVolume.Sample(lines =>
    {
        IReadOnlyList<NormalisedLine> normalised = Normalised(lines);
        Assert.Equal(1m, normalised.Sum(line => line.Fraction));
        Assert.Equal(100.00m, normalised.Sum(line => line.PercentShown));
        Assert.All(normalised, line =>
        {
            Assert.InRange(line.Fraction, 0m, 1m);
            Assert.Equal(decimal.Round(line.Fraction, 12), line.Fraction);
            Assert.InRange(Math.Abs((line.Fraction * 100m) - line.PercentShown), 0m, 0.01m);
        });
    });

    [Fact]
    public void Normalise_AnyOrder_GivesEachLineTheSameShare() =>
        Gen.Select(ByWeightOrVolume, Gen.Int).Sample((lines, shuffle) =>
        {
            TypedLine[] shuffled = [.. lines];
            new Random(shuffle).Shuffle(shuffled);
            Assert.Equal(Normalised(lines).OrderBy(line => line.LineId), Normalised(shuffled).OrderBy(line => line.LineId));
        });

    [Fact]
    public void Normalise_EqualLines_DifferByNoMoreThanOneUnit() =>
        Gen.Select(Gen.Guid.Array[1, 40], Parts).Sample((ids, part) =>
        {
            IReadOnlyList<NormalisedLine> lines = Normalised(
                ids.Distinct().Select(id => new TypedLine(id, part, LineBasis.PartsByWeight)).ToArray());
            Assert.InRange(lines.Max(line => line.PercentShown) - lines.Min(line => line.PercentShown), 0m, 0.01m);
        });

    [Fact]
    public void Normalise_OfWax_KeepsTheTypedShareOfTheWax() =>
        Gen.Select(Gen.Int[1, 3000], Gen.Int[1, 3000]).Sample((first, second) =>
        {
            IReadOnlyList<NormalisedLine> lines = Normalised(
            [
                new(Guid.CreateVersion7(), 1, LineBasis.PartsByWeight, IsWax: true),
                new(Guid.CreateVersion7(), first / 100m, LineBasis.PercentOfWax),
                new(Guid.CreateVersion7(), second / 100m, LineBasis.PercentOfWax),
            ]);
            Assert.InRange(Math.Abs((lines[1].Fraction / lines[0].Fraction) - (first / 10_000m)), 0m, 1e-11m);
            Assert.InRange(Math.Abs((lines[2].Fraction / lines[0].Fraction) - (second / 10_000m)), 0m, 1e-11m);
        });

    [Fact]
    public void Split_AnyMass_SumsExactlyAndStaysWithinAMilligram() =>
        Gen.Select(Gen.Long[0, 1_000_000_000_000], Parts.Array[1, 30]).Sample((milligrams, weights) =>
        {
            var total = Mass.FromMilligrams(milligrams);
            IReadOnlyList<Mass> lines = Scaling.Split(total, weights);
            Assert.Equal(total, lines.Sum());
            decimal sum = weights.Sum();
            Assert.All(lines.Zip(weights), pair =>
                Assert.InRange(Math.Abs(pair.First.Milligrams - (pair.Second / sum * milligrams)), 0m, 1m));
        });

    [Fact]
    public void LargestFrom_AnyStock_FitsAndOneThousandthMoreDoesNot() =>
        Gen.Select(Parts, Gen.Long[1, 100_000_000]).Array[1, 12].Sample(lines =>
        {
            decimal[] fractions = lines.Select(line => line.Item1 / lines.Sum(each => each.Item1)).ToArray();
            Mass?[] stock = lines.Select(line => (Mass?)Mass.FromMilligrams(line.Item2)).ToArray();
            LargestBatch largest = Scaling.LargestFrom(fractions, stock)!;
            Assert.True(largest.Total.IsZero || Scaling.Split(largest.Total, fractions).Zip(stock).All(pair => pair.First <= pair.Second));
            Mass more = largest.Total.Times(1.001m) + Mass.FromMilligrams(1 + (long)(2 / fractions[largest.LimitingLine]));
            Assert.Contains(Scaling.Split(more, fractions).Zip(stock), pair => pair.First > pair.Second);
        });

    [Fact]
    public void ScaleRest_AnyOvershoot_EndsOnTheFormula() =>
        Gen.Select(Gen.Long[1_000, 10_000_000].Array[2, 10], Gen.Int[1, 3000]).Sample((targets, overBy) =>
        {
            WeighLine[] lines = targets.Select(target => new WeighLine(Guid.CreateVersion7(), Mass.FromMilligrams(target), null)).ToArray();
            Mass actual = lines[0].Target.Times(1 + (overBy / 1000m));
            CorrectionPlan plan = Correction.ScaleRest(lines, lines[0].LineId, actual);
            Assert.Equal(actual, plan.Lines[0].NewTarget);
            Assert.Equal(plan.NewTotal, plan.Lines.Select(line => line.NewTarget).Sum());
            decimal before = lines[0].Target.Grams / lines.Select(line => line.Target).Sum().Grams;
            Assert.InRange(Math.Abs((actual.Grams / plan.NewTotal.Grams) - before), 0m, 0.002m);
        });

    private static IReadOnlyList<NormalisedLine> Normalised(TypedLine[] lines) =>
        Assert.IsType<FormulationResult.Normalised>(Formulation.Normalise(lines)).Lines;
}
