using System.Globalization;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Bench;

public class BenchTests
{
    private static readonly Mass TenthOfAGram = Mass.FromGrams(0.1m);

    [Theory]
    [InlineData("200", "1")]
    [InlineData("20", "0.2")]
    [InlineData("0.3", "0.2")]
    [InlineData("3320", "16.6")]
    public void Tolerance_Default_IsHalfAPercentOrTwoDivisions(string target, string tolerance) =>
        Assert.Equal(Numbers.Of(tolerance), WeighTolerance.Of(Mass.FromGrams(Numbers.Of(target)), TenthOfAGram).Grams);

    [Fact]
    public void LeastSensible_OnATenthOfAGramScale_IsTenGrams() =>
        Assert.Equal(10m, WeighTolerance.LeastSensible(TenthOfAGram).Grams);

    [Fact]
    public void Verdict_TwoHundredAndSixOnTwoHundred_IsOverByThreePercent()
    {
        var over = Assert.IsType<Verdict.Over>(WeighVerdict.Of(Mass.FromGrams(200), Mass.FromGrams(1), Mass.FromGrams(206)));
        Assert.Equal(Mass.FromGrams(6), over.By);
        Assert.Equal(0.03m, over.Fraction);
    }

    [Theory]
    [InlineData("201", typeof(Verdict.InTolerance))]
    [InlineData("199", typeof(Verdict.InTolerance))]
    [InlineData("201.001", typeof(Verdict.Over))]
    [InlineData("198.999", typeof(Verdict.Under))]
    [InlineData("0", typeof(Verdict.Under))]
    public void Verdict_AtTheEdge_IsWithin(string actual, Type verdict) => Assert.IsType(
        verdict, WeighVerdict.Of(Mass.FromGrams(200), Mass.FromGrams(1), Mass.FromGrams(Numbers.Of(actual))));

    [Fact]
    public void Verdict_NoTarget_IsABug() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WeighVerdict.Of(Mass.Zero, Mass.Zero, Mass.Zero));

    [Fact]
    public void Magnitude_KilogramsTypedAsGrams_AsksForKilograms()
    {
        MagnitudeQuestion? question = Magnitude.Question(Mass.FromGrams(3320), 3.32m);
        Assert.Equal(new MagnitudeQuestion(1000, true, 3.32m, AmountUnit.Kilogram), question);
        Assert.Equal("1,000 times below the target; did you mean 3.32 kg?", question!.Sentence(CultureInfo.GetCultureInfo("en-GB")));
        Assert.Equal("1.000 times below the target; did you mean 3,32 kg?", question.Sentence(CultureInfo.GetCultureInfo("de-DE")));
    }

    [Theory]
    [InlineData("200000", 1000, false, "200000", AmountUnit.Milligram)]
    [InlineData("2", 100, true, "200", AmountUnit.Gram)]
    [InlineData("20.1", 10, true, "201", AmountUnit.Gram)]
    [InlineData("20000", 100, false, "200", AmountUnit.Gram)]
    [InlineData("2000", 10, false, "200", AmountUnit.Gram)]
    public void Magnitude_PowerOfTen_SuggestsWhatWasMeant(string typed, int factor, bool below, string value, AmountUnit unit) =>
        Assert.Equal(
            new MagnitudeQuestion(factor, below, Numbers.Of(value), unit),
            Magnitude.Question(Mass.FromGrams(200), Numbers.Of(typed)));

    [Theory]
    [InlineData("200")]
    [InlineData("206")]
    [InlineData("100")]
    [InlineData("30")]
    [InlineData("0")]
    [InlineData("-0.2")]
    [InlineData("1e-28")]
    [InlineData("79228162514264337593543950335")]
    public void Magnitude_NoPowerOfTen_AsksNothing(string typed) =>
        Assert.Null(Magnitude.Question(Mass.FromGrams(200), Numbers.Of(typed)));

    /// <summary>Fragrance 480.0 in, DPG 206.0 on 200.0, alcohol waits at 3,320.0.</summary>
    [Fact]
    public void ScaleRest_DpgOver_EnlargesTheBatchByThreePercent()
    {
        var (fragrance, dpg, alcohol) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        CorrectionPlan plan = Correction.ScaleRest(
            [
                new(fragrance, Mass.FromGrams(480), Mass.FromGrams(480)),
                new(dpg, Mass.FromGrams(200), null),
                new(alcohol, Mass.FromGrams(3320), null),
            ],
            dpg,
            Mass.FromGrams(206));

        Assert.Equal(1.03m, plan.Factor);
        Assert.Equal(
            [
                new(fragrance, Mass.FromGrams(494.4m), Mass.FromGrams(14.4m)),
                new(dpg, Mass.FromGrams(206), Mass.Zero),
                new CorrectedLine(alcohol, Mass.FromGrams(3419.6m), null),
            ],
            plan.Lines);
        Assert.Equal(Mass.FromGrams(4120), plan.NewTotal);
        Assert.Equal(Mass.FromGrams(120), plan.Extra);
        Assert.Equal(0.0514m, decimal.Round(plan.AcceptedFraction, 4));
    }

    [Fact]
    public void ScaleRest_AnEarlierLineWasFurtherOver_AsksNobodyToTakeMaterialOut()
    {
        var (first, second) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        CorrectionPlan plan = Correction.ScaleRest(
            [new(first, Mass.FromGrams(100), Mass.FromGrams(105)), new(second, Mass.FromGrams(100), null)],
            second,
            Mass.FromGrams(102));
        Assert.Equal(1.05m, plan.Factor);
        Assert.All(plan.Lines, line => Assert.True(line.TopUp >= Mass.Zero));
        Assert.Equal(Mass.FromGrams(3), plan.Lines[1].TopUp);
    }

    [Fact]
    public void ScaleRest_NotOver_IsABug()
    {
        var line = new WeighLine(Guid.CreateVersion7(), Mass.FromGrams(100), null);
        Assert.Throws<ArgumentException>(() => Correction.ScaleRest([line], line.LineId, Mass.FromGrams(100)));
        Assert.Throws<ArgumentException>(() => Correction.ScaleRest([line], Guid.CreateVersion7(), Mass.FromGrams(120)));
    }
}
