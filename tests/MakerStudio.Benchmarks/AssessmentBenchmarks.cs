using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Benchmarks;

/// <summary>
/// Everything worked out anew with a key typed: 30 lines that bring 200 substances, every sheet read before. The whole
/// must stay under 2 ms; the baseline is its classification alone. The first assessment of new materials reads their
/// sheets too.
/// </summary>
[MemoryDiagnoser]
public class AssessmentBenchmarks
{
    private const int Lines = 30;
    private const int Substances = 200;
    private const int PartsALine = 10;

    private static readonly MarketChoices Choices = new(
        LabelScheme.EuropeanUnion, ["us-air-freshener-liquid", "ca-air-freshener-liquid"], 0.01m, [], new(2026, 11, 25));

    private AssessedFormula _formula = Formula();
    private Assessment _before = Assessment.Of(Formula(), Choices)!;

    [GlobalSetup]
    public void Prepare()
    {
        _formula = Formula();
        _before = Assessment.Of(_formula, Choices)!;
    }

    [Benchmark(Baseline = true)]
    public HazardsFound Classify_30Lines() => HazardAssessment.Of(_before.Facts);

    [Benchmark]
    public Assessment? Assess_30Lines() => Assessment.Of(_formula, Choices);

    [Benchmark]
    public Assessment? Assess_30Lines_SheetsUnread() => Assessment.Of(Formula(), Choices);

    private static AssessedFormula Formula() => new(
        new RoomSprayAlcohol(),
        [.. Enumerable.Range(0, Lines).Select(line => new AssessedLine(Id(line), Material(line), 1m / Lines))],
        MeasuredFacts.None,
        PackMillilitres: 100);

    private static AssessedMaterial Material(int line) => line == 0
        ? new(Id(line), "Alcohol", MaterialKind.Solvent, Strength: new(96, AlcoholBasis.PercentVolume))
        : new(
            Id(line),
            $"fragrance {line}",
            MaterialKind.FragranceOil,
            Density: new(0.95m),
            FlashPoint: new Celsius(80),
            Hazards: new("Skin Sens. 1 H317; Aquatic Chronic 2 H411"),
            Composition: [.. Enumerable.Range(0, PartsALine).Select(part => Part(((line * PartsALine) + part) % Substances))],
            Certificate: new("51", null, new Dictionary<string, decimal> { ["10B"] = 30 }));

    /// <summary>Those of the table first, then invented ones that a sheet classifies.</summary>
    private static StatedSubstance Part(int number)
    {
        IReadOnlyList<SubstanceRow> rows = SubstanceTable.Rows;
        return number < rows.Count
            ? new(rows[number].Name, rows[number].Cas, 1, 8)
            : new($"substance {number}", null, 1, 8, Hazards: new("Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Chronic 2 H411"));
    }

    private static Guid Id(int number) => new(number + 1, 0, 0, new byte[8]);
}
