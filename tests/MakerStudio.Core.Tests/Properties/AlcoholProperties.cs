using CsCheck;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Tests.Published;

namespace MakerStudio.Core.Tests.Properties;

public class AlcoholProperties
{
    private static readonly Gen<double> Share = Gen.Double[0, 1];
    private static readonly Gen<double> Celsius = Gen.Double[-20, 40];

    [Fact]
    public void Strength_EveryBasis_RoundTrips() => Gen.Select(Share, Gen.Enum<AlcoholBasis>()).Sample((share, basis) =>
    {
        double whole = basis == AlcoholBasis.UsProof ? 200 : 100;
        var stated = new AlcoholStrength((decimal)(share * whole), basis);
        Near.Equal((double)stated.Value, EthanolStrength.Of(stated).In(basis), 1e-9);
        EthanolStrength strength = EthanolStrength.FromMassFraction(share);
        Near.Equal(share, EthanolStrength.FromPercentVolume(Math.Min(100, strength.PercentVolume)).MassFraction, 1e-11);
        Near.Equal(share, EthanolStrength.FromUsProof(Math.Min(200, strength.UsProof)).MassFraction, 1e-11);
    });

    [Fact]
    public void Density_AtAnyTemperature_FindsItsStrengthAgain() => Gen.Select(Share, Celsius).Sample((share, celsius) =>
    {
        double density = R22.KilogramsPerCubicMetre(share, celsius);
        Near.Equal(share, EthanolStrength.FromDensity(density, celsius)!.Value.MassFraction, 1e-7);
        Assert.Null(EthanolStrength.FromDensity(R22.KilogramsPerCubicMetre(0, celsius) + 0.01, celsius));
        Assert.Null(EthanolStrength.FromDensity(R22.KilogramsPerCubicMetre(1, celsius) - 0.01, celsius));
    });

    [Fact]
    public void Density_Falls_WithStrength() => Gen.Select(Share, Share, Celsius).Where((a, b, _) => Math.Abs(a - b) > 1e-6).Sample((a, b, celsius) =>
        Assert.Equal(a < b, R22.KilogramsPerCubicMetre(a, celsius) > R22.KilogramsPerCubicMetre(b, celsius)));

    [Fact]
    public void Strength_Rises_InEveryBasis() => Gen.Select(Share, Share, Gen.Enum<AlcoholBasis>()).Where((a, b, _) => Math.Abs(a - b) > 1e-6).Sample((a, b, basis) =>
        Assert.Equal(a < b, EthanolStrength.FromMassFraction(a).In(basis) < EthanolStrength.FromMassFraction(b).In(basis)));

    /// <summary>What a plan from the start gives, the plan from its end gives back.</summary>
    [Fact]
    public void Dilution_FromStartAndFromEnd_Agree() =>
        Gen.Select(Gen.Double[0.2, 1], Gen.Double[0.05, 0.95], Gen.Int[1000, 1_000_000], Celsius, Gen.Bool).Sample((from, part, milligrams, celsius, byVolume) =>
        {
            EthanolStrength start = EthanolStrength.FromMassFraction(from);
            EthanolStrength wanted = EthanolStrength.FromMassFraction(from * part);
            var at = new Core.Quantities.Celsius((decimal)Math.Round(celsius, 3));
            var there = (DilutionResult.Plan)Dilution.Of(new(start, EthanolStrength.Water, wanted, FixedAmount.Start(Mass.FromMilligrams(milligrams)), at));
            FixedAmount end = byVolume ? FixedAmount.Final(there.Final.Volume) : FixedAmount.Final(there.Final.Mass);
            var back = (DilutionResult.Plan)Dilution.Of(new(start, EthanolStrength.Water, wanted, end, at));
            Assert.InRange(Math.Abs((back.Start.Mass - there.Start.Mass).Milligrams), 0, 2);
            Assert.InRange(Math.Abs((back.Add.Mass - there.Add.Mass).Milligrams), 0, 2);
            Assert.InRange(Math.Abs((there.Start.Mass + there.Add.Mass - there.Final.Mass).Milligrams), 0, 1);
        });
}
