using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Assessing;

namespace MakerStudio.Core.Tests.Assessing;

public class AssessmentDifferenceTests
{
    [Fact]
    public void Between_Same_IsNothing() => Assert.Empty(AssessmentDifference.Between(
        Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!, Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!));

    [Fact]
    public void Between_WithAndWithoutFixative_NamesWhatChanges()
    {
        AssessedFormula formula = AssessmentCase.Fig();
        IReadOnlyList<AssessmentDifference> differences = AssessmentDifference.Between(
            Assessment.Of(formula, AssessmentCase.Europe)!,
            Assessment.Of(AssessmentCase.Fig(0.12m, 0m, 0.88m), AssessmentCase.Europe)!);
        AssessmentDifference alcohol = Assert.Single(differences, each => each.Key == "alcohol by weight");
        // 96 % vol by weight, from OIML R 22, times the share of the line.
        double fraction = EthanolStrength.FromPercentVolume(96).MassFraction;
        Assert.Equal(FormattableString.Invariant($"Ethanol by weight: {83 * fraction:0.00} % → {88 * fraction:0.00} %"), alcohol.ToString());
        Assert.Contains(differences, each => each.Key == "density");
        Assert.DoesNotContain(differences, each => each.Key == "signal word");
    }

    [Fact]
    public void Between_MoreFragrance_NamesStatementsAllergensAndLimits()
    {
        IReadOnlyList<AssessmentDifference> differences = AssessmentDifference.Between(
            Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!,
            Assessment.Of(AssessmentCase.Fig(0.60m, 0m, 0.40m), AssessmentCase.Europe)!);
        string[] keys = [.. differences.Select(each => each.Key)];
        Assert.Contains("fragrance 10B", keys);
        Assert.Contains("allergen linalool", keys, StringComparer.OrdinalIgnoreCase);
        Assert.Contains("class AquaticChronic", keys);
        Assert.Contains(keys, key => key.StartsWith("advice load-above-usual", StringComparison.Ordinal));
    }
}
