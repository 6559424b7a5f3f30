using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Benchmarks;

/// <summary>
/// A formula of 30 lines, worked out anew with every key typed. Turning typed lines into shares is the baseline;
/// splitting a batch by those shares does the last step only and should be well below it.
/// </summary>
[MemoryDiagnoser]
public class BlendBenchmarks
{
    private static readonly TypedLine[] Formula = Lines(LineBasis.PartsByWeight, null);

    private static readonly TypedLine[] FormulaByVolume =
        Lines(LineBasis.PartsByVolume, Density.FromGramsPerMillilitre(0.79m));

    private static readonly decimal[] Fractions =
        [.. ((FormulationResult.Normalised)Formulation.Normalise(Formula)).Lines.Select(l => l.Fraction)];

    [Benchmark(Baseline = true)]
    public FormulationResult Normalise_30Lines() => Formulation.Normalise(Formula);

    [Benchmark]
    public FormulationResult Normalise_30LinesByVolume() => Formulation.Normalise(FormulaByVolume);

    [Benchmark]
    public IReadOnlyList<Mass> Split_30Lines() => Scaling.Split(Mass.FromGrams(4000m), Fractions);

    private static TypedLine[] Lines(LineBasis basis, Density? density) =>
        [.. Enumerable.Range(1, 30).Select(i => new TypedLine(new Guid(i, 0, 0, new byte[8]), i / 4m, basis, density))];
}
