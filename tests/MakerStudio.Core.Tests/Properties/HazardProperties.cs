using CsCheck;
using MakerStudio.Core.Hazards;

namespace MakerStudio.Core.Tests.Properties;

public class HazardProperties
{
    private const decimal SharedOut = 60m;

    private static readonly HazardCategory[] Categories = Enum.GetValues<HazardCategory>();

    private static readonly Gen<HazardEntry> Entry = Among(Categories).Select(category => new HazardEntry(category));

    private static readonly Gen<decimal> Percent = Gen.OneOf(Gen.Int[1, 1000].Select(each => each / 1000m), Gen.Int[1, 1000].Select(each => each / 10m));

    private static readonly Gen<HazardFacts> Facts = Gen.Select(
        Entry.Array[0, 6],
        Gen.Select(Among(Categories), Percent).Array[0, 2],
        Gen.Select(Gen.Enum<AcuteRoute>(), Gen.Int[1, 3000]).Array[0, 2],
        Among<int?>(null, 1, 10, 100),
        Among<int?>(null, 1, 10, 100),
        Among(true, true, true, false),
        Among(0, 0, 0, 1),
        (entries, limits, estimates, acuteM, chronicM, adds, unknown) => unknown == 1
            ? HazardFacts.Unknown
            : new HazardFacts(
                entries,
                limits.Select(limit => new SpecificLimit(limit.Item1, limit.Item2)),
                estimates.Select(estimate => new AcuteEstimate(estimate.Item1, estimate.Item2)),
                acuteM,
                chronicM,
                adds));

    private static readonly Gen<MaterialHazards> Material = Gen.Select(
        Gen.Int[0, 20],
        Gen.Select(Gen.Int[0, 8], Facts, Percent).Array[0, 5],
        Facts,
        Gen.Bool,
        (number, parts, whole, hasWhole) => MaterialHazards.Of(
            $"material {number}",
            hasWhole || parts.Length == 0 ? whole : null,
            [.. parts.Select(part => new Constituent(new($"substance {part.Item1}", null, part.Item2), 0, part.Item3))]));

    private static readonly Gen<HazardLine[]> Lines = Gen.Select(Material, Gen.Int[1, 1000]).Array[1, 6].Select(lines =>
    {
        decimal total = lines.Sum(line => (decimal)line.Item2);
        return lines.Select((line, index) =>
            new HazardLine(Guid.CreateVersion7(), $"line {index}", line.Item2 / total * SharedOut, line.Item1)).ToArray();
    });

    /// <summary>The grown line takes the place of something without a class; the others keep their shares.</summary>
    [Fact]
    public void Class_WhenOneLineAloneGrows_NeverBecomesMilder() =>
        Gen.Select(Lines, Gen.Int[0, 5], Gen.Int[1, 400]).Sample((lines, which, by) =>
        {
            HazardLine[] grown = [.. lines];
            int index = which % grown.Length;
            grown[index] = grown[index] with { Percent = grown[index].Percent + (by / 10m) };
            HazardsFound before = HazardAssessment.Of(new(lines));
            HazardsFound after = HazardAssessment.Of(new(grown));
            foreach (HazardClass each in Enum.GetValues<HazardClass>())
            {
                Assert.True(Rank(after, each) >= Rank(before, each), $"{each}: {Name(before, each)} became {Name(after, each)}");
            }
        });

    [Fact]
    public void Classes_DoNotDependOnTheOrderOfLines() =>
        Gen.Select(Lines, Gen.Int).Sample((lines, seed) =>
        {
            HazardLine[] shuffled = [.. lines];
            new Random(seed).Shuffle(shuffled);
            HazardsFound one = HazardAssessment.Of(new(lines));
            HazardsFound other = HazardAssessment.Of(new(shuffled));
            Assert.Equal(
                one.Findings.Select(finding => (finding.Category, finding.Code)),
                other.Findings.Select(finding => (finding.Category, finding.Code)));
            Assert.Equal(
                one.Sentences.Select(sentence => sentence.Text),
                other.Sentences.Select(sentence => sentence.Text));
        });

    [Fact]
    public void Class_OneAtMostOfEach() => Lines.Sample(lines =>
    {
        HazardsFound found = HazardAssessment.Of(new(lines));
        Assert.Equal(found.Findings.Count, found.Findings.Select(finding => HazardCategories.ClassOf(finding.Category)).Distinct().Count());
    });

    /// <summary>Every share that a step counted can be followed back to the lines that bring it.</summary>
    [Fact]
    public void Workings_LinesOfAnIngredient_SumToItsShare() => Lines.Sample(lines =>
    {
        var ids = lines.Select(line => line.LineId).ToHashSet();
        foreach (Contribution each in HazardAssessment.Of(new(lines)).Judgements.SelectMany(judgement => judgement.Result.Steps).SelectMany(step => step.From))
        {
            Assert.All(each.Ingredient.Lines, share => Assert.Contains(share.LineId, ids));
            Assert.Equal(each.Ingredient.Percent, each.Ingredient.Lines.Sum(share => share.Percent));
        }
    });

    private static Gen<T> Among<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static int Rank(HazardsFound found, HazardClass hazardClass) =>
        found.In(hazardClass) is { } finding ? HazardCategories.Of(finding.Category).Rank : 0;

    private static string Name(HazardsFound found, HazardClass hazardClass) =>
        found.In(hazardClass) is { } finding ? HazardCategories.Name(finding.Category) : "not classed";
}
