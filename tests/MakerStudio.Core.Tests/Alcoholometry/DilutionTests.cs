using System.Globalization;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Alcoholometry;

public class DilutionTests
{
    [Fact]
    public void Of_StrongerAlcohol_RaisesTheStrength()
    {
        DilutionResult.Plan plan = Plan(70, 96, 80, FixedAmount.Start(Mass.FromGrams(500)));
        decimal ethanol = (plan.Start.Mass.Grams * (decimal)plan.Start.Strength.MassFraction) + (plan.Add.Mass.Grams * (decimal)plan.Add.Strength.MassFraction);
        Assert.InRange((double)(ethanol / plan.Final.Mass.Grams), 0.73479, 0.73481);
        Assert.Equal(500m, plan.Start.Mass.Grams);
    }

    [Fact]
    public void Of_FinalMassOrVolume_ComesOutAsAsked()
    {
        Assert.Equal(2000m, Plan(96, 0, 70, FixedAmount.Final(Mass.FromGrams(2000))).Final.Mass.Grams);
        Assert.Equal(1000m, decimal.Round(Plan(96, 0, 70, FixedAmount.Final(Volume.FromMillilitres(1000))).Final.Volume.Millilitres, 6));
    }

    [Fact]
    public void Of_SameStrength_AddsNothing()
    {
        DilutionResult.Plan plan = Plan(70, 0, 70, FixedAmount.Start(Mass.FromGrams(500)));
        Assert.Equal(Mass.Zero, plan.Add.Mass);
        Assert.Equal(500m, plan.Final.Mass.Grams);
    }

    [Fact]
    public void Of_AtAnotherTemperature_KeepsTheMassesOfAWeighedStart()
    {
        DilutionResult.Plan cold = Plan(96, 0, 70, FixedAmount.Start(Mass.FromGrams(800)), 5);
        DilutionResult.Plan warm = Plan(96, 0, 70, FixedAmount.Start(Mass.FromGrams(800)), 30);
        Assert.Equal(cold.Add.Mass, warm.Add.Mass);
        Assert.True(cold.Final.Volume < warm.Final.Volume);
    }

    [Theory]
    [InlineData(70, 0, 80, "cannot be reached")]
    [InlineData(70, 96, 60, "cannot be reached")]
    [InlineData(70, 0, 0, "cannot be reached")]
    public void Of_StrengthNotBetween_SaysWhy(double from, double with, double to, string why) =>
        Assert.Contains(why, NotPossible(from, with, to, FixedAmount.Start(Mass.FromGrams(1)), 20), StringComparison.Ordinal);

    [Theory]
    [InlineData(-20.1)]
    [InlineData(40.1)]
    public void Of_OutsideR22_SaysItDoesNotApply(double celsius) =>
        Assert.Contains("−20 to 40 °C", NotPossible(96, 0, 70, FixedAmount.Start(Mass.FromGrams(1)), celsius), StringComparison.Ordinal);

    [Fact]
    public void Of_NoAmountOrTooMuch_SaysWhy()
    {
        Assert.Contains("above zero", NotPossible(96, 0, 70, FixedAmount.Start(Mass.Zero), 20), StringComparison.Ordinal);
        Assert.Contains("thousand tonnes", NotPossible(96, 0, 0.001, FixedAmount.Start(Mass.FromGrams(1_000_000)), 20), StringComparison.Ordinal);
        Assert.Contains("thousand tonnes", NotPossible(96, 0, 70, FixedAmount.Final(Volume.FromMillilitres(decimal.MaxValue)), 20), StringComparison.Ordinal);
    }

    [Fact]
    public void Workings_SayMassesAndVolumes_InTheReadersCulture()
    {
        DilutionResult.Plan plan = Plan(96, 0, 70, FixedAmount.Start(Volume.FromMillilitres(1000)));
        string german = string.Join(' ', plan.Workings.Select(step => step.Says(CultureInfo.GetCultureInfo("de-DE"))));
        Assert.Contains("407,06 g", german, StringComparison.Ordinal);
        Assert.Contains("36.37 mL", plan.Workings[1].ToString(), StringComparison.Ordinal);
        Assert.All(plan.Workings, step => Assert.Contains("OIML R 22", step.Source.Citation, StringComparison.Ordinal));
    }

    [Fact]
    public void Scope_OtherThingsThanATrace_DoesNotApply()
    {
        Assert.IsType<AlcoholReading.Applies>(EthanolWaterScope.Of(0.95, 0.0487, 0.0013));
        Assert.Contains("12 %", Assert.IsType<AlcoholReading.DoesNotApply>(EthanolWaterScope.Of(0.83, 0.05, 0.12)).Why, StringComparison.Ordinal);
        Assert.IsType<AlcoholReading.DoesNotApply>(EthanolWaterScope.Of(0, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolWaterScope.Of(double.NaN, 0, 1));
    }

    [Theory]
    [InlineData(-0.001, 20)]
    [InlineData(1.001, 20)]
    [InlineData(double.NaN, 20)]
    [InlineData(0.5, double.NaN)]
    [InlineData(0.5, 40.01)]
    public void R22_OutsideItsRange_Throws(double p, double t) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => R22.KilogramsPerCubicMetre(p, t));

    [Fact]
    public void R22_Density_AllocatesNothing()
    {
        double sum = R22.KilogramsPerCubicMetre(0.5, 10);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            sum += R22.KilogramsPerCubicMetre(i / 1000.0, 10);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(sum > 0);
    }

    private static DilutionResult.Plan Plan(double from, double with, double to, FixedAmount amount, double celsius = 20) =>
        Assert.IsType<DilutionResult.Plan>(Dilution.Of(Request(from, with, to, amount, celsius)));

    private static string NotPossible(double from, double with, double to, FixedAmount amount, double celsius) =>
        Assert.IsType<DilutionResult.NotPossible>(Dilution.Of(Request(from, with, to, amount, celsius))).Why;

    private static DilutionRequest Request(double from, double with, double to, FixedAmount amount, double celsius) => new(
        EthanolStrength.FromPercentVolume(from), EthanolStrength.FromPercentVolume(with), EthanolStrength.FromPercentVolume(to),
        amount, new((decimal)celsius));
}
