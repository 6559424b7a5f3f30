using CsCheck;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Rooms;
using MakerStudio.Core.Tests.Published;

namespace MakerStudio.Core.Tests.Properties;

public class PhysicsProperties
{
    private static readonly Celsius At20 = new(20);

    private static readonly Gen<MixtureLine> Line = Gen.Select(
        Gen.Guid, Gen.Int[1, 1000], Gen.Int[0, Substances.All.Count - 1],
        (id, parts, which) => MixtureLine.OfSubstance(id, Substances.All[which], parts));

    private static readonly Gen<MixtureLine[]> Lines = Line.Array[1, 12].Select(lines => lines.DistinctBy(line => line.LineId).ToArray());

    [Fact]
    public void Mixture_AnyOrder_GivesTheSameDigits() => Gen.Select(Lines, Gen.Int).Sample((lines, shuffle) =>
    {
        MixtureLine[] shuffled = [.. lines];
        new Random(shuffle).Shuffle(shuffled);
        (Mixture one, Mixture other) = (Mixture.Of(lines), Mixture.Of(shuffled));
        Near.Equal(1, one.Lines.Sum(line => line.MassFraction), 1e-12);
        // The sums below are rounded and would forgive an order that follows the typing.
        Assert.Equal(one.Lines.Select(line => line.LineId), other.Lines.Select(line => line.LineId));
        Assert.Equal(DensityOf(one), DensityOf(other));
        Assert.Equal($"{FlashPoint.Of(one) switch { FlashPointResult.Estimated found => found.Value, var none => none.GetType() }}",
            $"{FlashPoint.Of(other) switch { FlashPointResult.Estimated found => found.Value, var none => none.GetType() }}");
        Assert.Equal(AlcoholContent.Of(one, null).PercentMass, AlcoholContent.Of(other, null).PercentMass);
    }, iter: 60);

    /// <summary>Splitting a line in two changes nothing.</summary>
    [Fact]
    public void Density_OfALineSplitInTwo_IsTheSame() => Gen.Select(Lines, Gen.Double[0.1, 0.9]).Sample((lines, part) =>
    {
        MixtureLine first = lines[0];
        MixtureLine[] split =
        [
            first with { MassFraction = first.MassFraction * part },
            first with { MassFraction = first.MassFraction * (1 - part), LineId = Guid.CreateVersion7() },
            .. lines.Skip(1),
        ];
        Near.Equal((double)DensityOf(Mixture.Of(lines)), (double)DensityOf(Mixture.Of(split)), 2e-6);
    });

    /// <summary>A mixture is no lighter than its lightest part, and shrinks at most as much as alcohol and water do.</summary>
    [Fact]
    public void Density_LiesBetweenItsParts() => Lines.Sample(lines =>
    {
        decimal density = DensityOf(Mixture.Of(lines));
        Assert.InRange(density, lines.Min(line => line.Density!.Value.GramsPerMillilitre) - 0.001m, lines.Max(line => line.Density!.Value.GramsPerMillilitre) * 1.04m);
    });

    /// <summary>Without alcohol and water the volumes only add.</summary>
    [Fact]
    public void Density_WithoutAlcoholAndWater_AddsVolumes() => Lines.Sample(lines =>
    {
        MixtureLine[] dry = [.. lines.Where(line => line.Ethanol + line.Water == 0)];
        if (dry.Length > 0)
        {
            double added = dry.Sum(line => line.MassFraction) / dry.Sum(line => line.MassFraction / (double)line.Density!.Value.GramsPerMillilitre);
            Near.Equal(added, (double)DensityOf(Mixture.Of(dry)), 2e-6);
        }
    });

    [Fact]
    public void FlashPoint_FallsAsTheAlcoholGrows() => Gen.Select(Gen.Double[3, 99], Gen.Double[0.1, 1]).Sample((percent, more) =>
    {
        foreach (ActivityModel model in EthanolWaterActivity.All)
        {
            double weaker = FlashPoint.OfEthanolWater(EthanolStrength.FromPercentVolume(percent), model) ?? double.MaxValue;
            Assert.True(FlashPoint.OfEthanolWater(EthanolStrength.FromPercentVolume(percent + more), model) < weaker);
        }
    }, iter: 40);

    /// <summary>An estimate is never taken for a milder class where the alcohol grows.</summary>
    [Fact]
    public void FlashPoint_ClassNeverMilder_AsTheAlcoholGrows() => Gen.Select(Gen.Double[3, 99], Gen.Double[0.1, 1]).Sample((percent, more) =>
        Assert.True(ClassOf(percent + more) <= ClassOf(percent)), iter: 60);

    [Fact]
    public void WaxShare_BothWays_RoundTrips() => Gen.Int[0, 999].Sample(thousandths =>
    {
        decimal share = thousandths / 1000m;
        Assert.InRange(Math.Abs(WaxShare.OfWax(WaxShare.OfTotal(share)) - share), 0, 1e-24m);
        Assert.InRange(Math.Abs(WaxShare.OfTotal(WaxShare.OfWax(share)) - share), 0, 1e-24m);
    });

    [Fact]
    public void Room_MoreAirChanges_LessScent() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[0, 5], Gen.Double[0.01, 5], Gen.Double[0.01, 24]).Sample((volume, changes, more, hours) =>
        {
            (Room still, Room airy) = (new(volume, changes), new(volume, changes + more));
            Assert.True(WellMixedRoom.AfterRelease(airy, 1000, hours) < WellMixedRoom.AfterRelease(still, 1000, hours));
            Assert.True(WellMixedRoom.MeanAfterRelease(airy, 1000, hours) < WellMixedRoom.MeanAfterRelease(still, 1000, hours));
            Assert.True(WellMixedRoom.WithSource(airy, 1000, hours) < WellMixedRoom.WithSource(still, 1000, hours));
            Assert.True(WellMixedRoom.MeanWithSource(airy, 1000, hours) < WellMixedRoom.MeanWithSource(still, 1000, hours));
        });

    private static FlammableCategory ClassOf(double percent) =>
        FlashPoint.Of(Mixture.Of([MixtureLine.OfAlcohol(Guid.Empty, "alcohol", 1, EthanolStrength.FromPercentVolume(percent))])) is FlashPointResult.Estimated found
            ? found.Decision.TakeAs
            : FlammableCategory.NotClassified;

    private static decimal DensityOf(Mixture mixture) =>
        Assert.IsType<DensityResult.Known>(MixtureVolume.Of(mixture, At20)).Density.GramsPerMillilitre;
}
