using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Benchmarks;

/// <summary>
/// The physics of a formula, worked out anew with every key typed. The baseline is one density of ethanol and water,
/// which must stay under 1 µs and allocate nothing; a strength from % vol is some fifty of them.
/// </summary>
[MemoryDiagnoser]
public class PhysicsBenchmarks
{
    private static readonly Celsius At20 = new(20);

    // Thirty lines of the substances that have group data: the slowest road.
    private static readonly Mixture Formula = Mixture.Of(
    [
        .. Substances.All.Where(substance => Unifac.Find(substance.Cas) is not null && substance.AntoineNear(293) is not null)
            .Take(30)
            .Select((substance, i) => MixtureLine.OfSubstance(new Guid(i, 0, 0, new byte[8]), substance, i + 1)),
    ]);

    private static readonly Mixture Alcohol =
        Mixture.Of([MixtureLine.OfAlcohol(Guid.Empty, "alcohol", 1, EthanolStrength.FromPercentVolume(70))]);

    private double _share = 0.5;

    [Benchmark(Baseline = true)]
    public double Density_EthanolWater() => R22.KilogramsPerCubicMetre(_share, 12.5);

    [Benchmark]
    public EthanolStrength Strength_FromPercentVolume() => EthanolStrength.FromPercentVolume(100 * _share);

    [Benchmark]
    public DensityResult MixtureVolume_Formula() => MixtureVolume.Of(Formula, At20);

    [Benchmark]
    public FlashPointResult FlashPoint_EthanolWater() => FlashPoint.Of(Alcohol);

    [Benchmark]
    public FlashPointResult FlashPoint_FormulaByGroups() => FlashPoint.Of(Formula);
}
