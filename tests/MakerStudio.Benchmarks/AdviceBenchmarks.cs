using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using Mixture = MakerStudio.Core.Blending.Mixture;

namespace MakerStudio.Benchmarks;

/// <summary>
/// Advice on a formula as it is typed: 30 lines over 200 substances. Making the mixture reads every CAS number; the
/// rules themselves, on what physics has already worked out, should be far below the 2 ms of a whole assessment.
/// </summary>
[MemoryDiagnoser]
public class AdviceBenchmarks
{
    private const int Lines = 30;
    private const int Substances = 200;
    private const int PartsALine = 10;

    private AssessedFormula _formula = new(new RoomSprayAlcohol(), [], MeasuredFacts.None);
    private Mixture? _mixture;
    private AlcoholContent? _alcohol;
    private DensityResult? _density;

    [GlobalSetup]
    public void Make()
    {
        _formula = _formula with { Lines = [.. Enumerable.Range(0, Lines).Select(Line)] };
        _mixture = FormulaMixture.Of(_formula);
        _density = MixtureVolume.Of(_mixture, new(20m));
        _alcohol = AlcoholContent.Of(_mixture, null);
    }

    [Benchmark]
    public Mixture MixtureOfFormula() => FormulaMixture.Of(_formula);

    [Benchmark(Baseline = true)]
    public int Judge() => AdviceRules.Judge(new(_formula, _mixture!, _alcohol!, _density!)).Count;

    private static AssessedLine Line(int line) => new(Guid.CreateVersion7(), Material(line), 1m / Lines);

    private static AssessedMaterial Material(int line) => line == 0
        ? new(Guid.CreateVersion7(), "Alcohol", MaterialKind.Solvent, Strength: new(96m, AlcoholBasis.PercentVolume))
        : new(Guid.CreateVersion7(), $"Oil {line}", MaterialKind.FragranceOil, Density: new(0.95m),
            Composition: [.. Enumerable.Range(0, PartsALine).Select(part => Substance(((line * PartsALine) + part) % Substances))]);

    private static StatedSubstance Substance(int number) =>
        new($"substance {number}", SubstanceTable.Rows[number % SubstanceTable.Rows.Count].Cas, 1m, 10m);
}
