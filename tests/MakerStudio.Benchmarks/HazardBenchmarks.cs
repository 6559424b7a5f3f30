using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Hazards;

namespace MakerStudio.Benchmarks;

/// <summary>Classifying a formula as it is typed: 30 lines that bring 200 ingredients.</summary>
[MemoryDiagnoser]
public class HazardBenchmarks
{
    private const int Lines = 30;
    private const int Ingredients = 200;
    private const int PartsALine = 10;

    private MixtureFacts _mixture = new([]);

    [GlobalSetup]
    public void Make() => _mixture = new(
        [.. Enumerable.Range(0, Lines).Select(line => new HazardLine(Guid.CreateVersion7(), $"line {line}", 100m / Lines, Material(line)))],
        FlashPoint: new(17m, IsMeasured: true));

    [Benchmark(Baseline = true)]
    public int Aggregate() => new Mixture(_mixture).All.Count;

    [Benchmark]
    public int Classify() => HazardAssessment.Of(_mixture).Findings.Count;

    private static MaterialHazards Material(int line) => MaterialHazards.Of(
        $"material {line}",
        new(ClassificationText.Parse("Skin Sens. 1 H317; Aquatic Chronic 2 H411").Entries),
        [.. Enumerable.Range(0, PartsALine).Select(part => new Constituent(Ingredient(((line * PartsALine) + part) % Ingredients), 0, 8m))]);

    private static ClassifiedSubstance Ingredient(int number) =>
        new($"ingredient {number}", null, SubstanceTable.Find(SubstanceTable.Rows[number % SubstanceTable.Rows.Count].Cas)!.Facts);
}
