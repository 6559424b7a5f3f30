using System.Globalization;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>How a verdict on fragrance came about, step by step.</summary>
internal static class FragranceWorkings
{
    /// <summary>The amendment that brought the categories of today.</summary>
    private const int FirstWithTheseCategories = 49;

    private const int Newest = 51;

    /// <summary>New creations, then existing ones, follow the 51st amendment from these days on. From memory.</summary>
    private static readonly DateOnly NewCreations = new(2024, 3, 30);
    private static readonly DateOnly ExistingCreations = new(2025, 10, 30);

    private static readonly Source Paper = new("the material's fragrance certificate", DataStatus.Read);
    private static readonly Source Amendments = new("IFRA Standards, notification of the 49th and 51st amendments", DataStatus.Memory);
    private static readonly Source Sum = new("worked out: the same substance may limit each of them", DataStatus.Derived);
    private static readonly Source PhototoxicPolicy = new("Guidance for the use of IFRA Standards, 1.6.1: phototoxic ingredients", DataStatus.Memory);

    internal static IEnumerable<WorkingStep> Of(FragranceCategoryUse use, MarketChoices choices)
    {
        string rule = $"Fragrance limits, category {use.Category}";
        yield return new(rule, $"Judged as {use.Placement.As}, category {use.Category}.", use.Placement.Source);
        foreach (WorkingStep step in use.Materials.Where(material => material.Percent > 0).SelectMany(material => Of(material, rule, choices.On)))
        {
            yield return step;
        }

        foreach (SubstanceTotal total in use.Substances)
        {
            yield return Of(total, rule);
        }

        if (use.PhototoxicSum is { } phototoxic)
        {
            yield return new(rule, $"Phototoxic ingredients together: Σ(share ÷ limit) = {phototoxic:0.####}, {Verdict(phototoxic, use.PhototoxicDecides)}.", PhototoxicPolicy);
        }

        if (use.Materials.Count(material => material is { MaxPercent: not null, Percent: > 0 }) > 1)
        {
            yield return use.SumDecides
                ? new(rule, $"Several fragrances: Σ(use ÷ limit) = {use.SumOfRatios:0.####}, {Verdict(use.SumOfRatios, true)}.", Sum)
                : new(rule, $"Several fragrances whose listed substances account for their certificates: the sums of these substances decide, not Σ(use ÷ limit) = {use.SumOfRatios:0.####}.", Sum);
        }

        if (use.LargestPercent is { } largest)
        {
            yield return new(rule, $"The first limit is reached with {largest:0.00##} % of fragrance in the product.", Sum);
        }
    }

    private static IEnumerable<WorkingStep> Of(FragranceMaterialUse use, string rule, DateOnly on)
    {
        Guid? line = use.LineIds is [var only] ? only : null;
        string name = use.Material.Name;
        if (use.Material.Certificate is not { } certificate)
        {
            yield return new(rule, $"{name}: {use.Percent:0.00##} % of the product; it has no certificate.", Paper, line);
            yield break;
        }

        yield return use switch
        {
            { MaxPercent: null } => new(rule, $"{name}: {use.Percent:0.00##} % of the product; its certificate, amendment {certificate.Amendment}, does not have this category.", Paper, line),
            { IsNotLimited: true } => new(rule, $"{name}: {use.Percent:0.00##} % of the product; its certificate, amendment {certificate.Amendment}, sets no limit in this category, which is no recommendation.", Paper, line),
            _ => new(rule, $"{name}: {use.Percent:0.00##} % of the product; its certificate, amendment {certificate.Amendment}, allows {use.MaxPercent:0.####} %: {Verdict(use.Ratio!.Value, true)}.", Paper, line),
        };
        if (Number(certificate.Amendment) is { } amendment && About(amendment, on) is { } note)
        {
            yield return new(rule, $"{name}: {note}", Amendments, line);
        }
    }

    private static WorkingStep Of(SubstanceTotal total, string rule)
    {
        string verdict = Verdict(total.Ratio, !total.LeftToCertificate);
        return new(rule, $"{total.Name}: {total.Percent:0.######} % in the product over {total.From.Count} {(total.From.Count == 1 ? "line" : "lines")}, limit {total.Limit:0.######} % ({total.Amendment}): {verdict}.", total.Source);
    }

    private static string Verdict(decimal ratio, bool decides) => (LimitRatio.IsWithin(ratio), decides) switch
    {
        (true, _) => "within",
        (false, true) => "above",
        _ => "above by the high end of what is listed, but the certificate knows the exact content and decides",
    };

    private static FormattableString? About(int amendment, DateOnly on) => amendment switch
    {
        < FirstWithTheseCategories => $"the categories of amendment {amendment} are other ones; ask for a newer certificate.",
        < Newest when on >= ExistingCreations => $"amendment {Newest} has held for existing fragrances since {ExistingCreations:yyyy-MM-dd}; ask for a newer certificate.",
        < Newest when on >= NewCreations => $"amendment {Newest} has held for new fragrances since {NewCreations:yyyy-MM-dd}.",
        _ => null,
    };

    /// <summary>The first number in "51", "51st" or "IFRA 51"; null where there is none.</summary>
    private static int? Number(string amendment)
    {
        string digits = string.Concat(amendment.SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(char.IsAsciiDigit));
        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
    }
}
