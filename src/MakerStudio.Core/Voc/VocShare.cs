using System.Runtime.CompilerServices;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>One finding about what a material holds.</summary>
/// <param name="Saying">A sentence that begins with the material's name.</param>
internal sealed record VocFinding(FormattableString Saying, Source Source);

/// <summary>How much of a material counts as VOC under a definition. Per cent of the material by weight.</summary>
/// <param name="Percent">With what is not known, which is taken as VOC.</param>
/// <param name="Unknown">The part of it that nobody knows.</param>
/// <param name="WhatIsUnknown">In words; null where nothing is.</param>
internal sealed record VocShare(decimal Percent, decimal Unknown, string? WhatIsUnknown, IReadOnlyList<VocFinding> Findings)
{
    private const decimal Whole = 100m;
    private const int Digits = 10;

    /// <summary>What a material holds stays the same while its amount is typed, so it is judged once.</summary>
    private static readonly ConditionalWeakTable<AssessedMaterial, ByDefinition> Judged = [];

    private static readonly Source Statement = new("the supplier's statement for this material", DataStatus.Read);
    private static readonly Source Careful = new("what is not known is taken as VOC", DataStatus.Derived);
    private static readonly Source Sheet = new("the strength stated for this material", DataStatus.Read);
    private static readonly Source DryMatter = new("dried plants are no liquid that evaporates", DataStatus.CommonPractice);
    private static readonly Source WaxRule = new("17 CCR 94508, LVP-VOC (B); waxes have more than 12 carbon atoms", DataStatus.Memory);
    private static readonly Source WaterRule = new("40 CFR 51.100(s); 17 CCR 94508", DataStatus.Memory);

    private sealed record ByDefinition(VocShare Federal, VocShare California);

    /// <summary>The states after the model rule leave out what California leaves out.</summary>
    internal static VocShare Of(AssessedMaterial material, VocDefinition definition)
    {
        ByDefinition both = Judged.GetValue(material, each => new(Judge(each, VocDefinition.UsFederal), Judge(each, VocDefinition.California)));
        return definition == VocDefinition.UsFederal ? both.Federal : both.California;
    }

    private static VocShare Judge(AssessedMaterial material, VocDefinition definition)
    {
        VocShare share = ByWhatIsKnown(material, definition);
        return share with { Findings = [.. share.Findings.Select(finding => finding with { Saying = $"{material.Name}: {finding.Saying}" })] };
    }

    /// <summary>
    /// By the first of these that is known: the supplier's stated share, a stated strength, the substance it is, its
    /// composition, its kind.
    /// </summary>
    private static VocShare ByWhatIsKnown(AssessedMaterial material, VocDefinition definition)
    {
        VocShare? alcohol = material.Strength is { } strength ? OfAlcohol(material, strength, definition) : null;
        if (material.VolatilePercent is { } stated)
        {
            decimal share = Math.Clamp(stated, 0, Whole);
            return alcohol is null || alcohol.Percent - alcohol.Unknown <= share
                ? Known(share, $"{share:0.##} % of it counts.", Statement)
                : alcohol with { Findings = [.. alcohol.Findings, new($"{share:0.##} % is stated, which is less than the alcohol in it; the alcohol counts.", Statement)] };
        }

        if (alcohol is not null)
        {
            return alcohol;
        }

        string? cas = SubstanceShares.CasOf(material);
        return material.Composition.Count < 2 && VocSubstances.Judge(cas, definition) is { } judgement
            ? OfSubstance(judgement, material.Cas is null)
            : OfComposition(material, definition, KindRule(material.Kind));
    }

    private static VocShare Known(decimal percent, FormattableString saying, Source source) =>
        new(percent, 0, null, [new(saying, source)]);

    private static VocShare OfSubstance(VocJudgement judgement, bool isByName)
    {
        string by = isByName ? ", known by its name" : "";
        return judgement.Counts
            ? Known(Whole, $"all of it counts{by}: {judgement.Why}.", judgement.Source)
            : Known(0, $"none of it counts{by}: {judgement.Why}.", judgement.Source);
    }

    /// <summary>Why nothing of a kind of material counts that is not listed in it; null where all of it does.</summary>
    private static (string Why, Source Source)? KindRule(MaterialKind kind) => kind switch
    {
        MaterialKind.Water => ("water is no VOC", WaterRule),
        MaterialKind.Wax => ("wax does not evaporate at room temperature", WaxRule),
        MaterialKind.DryBotanical => ("dry matter does not evaporate", DryMatter),
        _ => null,
    };

    private static VocShare OfAlcohol(AssessedMaterial material, AlcoholStrength strength, VocDefinition definition)
    {
        bool isEthanol = material.Cas is null || material.Cas.Text == Substances.EthanolCas;
        decimal alcohol = isEthanol ? Ethanol(strength) : OtherAlcohol(strength);
        VocFinding finding = isEthanol
            ? new($"{strength.Value:0.##} {strength.BasisInWords} ethanol is {alcohol:0.00} % by weight, which counts.", strength.Basis == AlcoholBasis.PercentMass ? Sheet : R22.Source)
            : new($"{strength.Value:0.##} {strength.BasisInWords} is taken as {alcohol:0.##} % by weight, which is not too low; it counts.", Sheet);
        VocShare others = OfParts(
            material.Composition.Where(part => SubstanceNames.Identity(part.Name, part.Cas) != (material.Cas?.Text ?? Substances.EthanolCas)),
            definition,
            (Why: "the rest is water", Sheet),
            Whole - alcohol);
        return others with { Percent = alcohol + others.Percent, Findings = [finding, .. others.Findings] };
    }

    /// <summary>% by weight, by OIML R 22.</summary>
    private static decimal Ethanol(AlcoholStrength strength) => strength.Basis == AlcoholBasis.PercentMass
        ? strength.Value
        : decimal.Round((decimal)EthanolStrength.Of(strength).PercentMass, Digits);

    /// <summary>% by volume stands in for % by weight: of an alcohol lighter than water it is the larger figure.</summary>
    private static decimal OtherAlcohol(AlcoholStrength strength) => strength.PercentVolume ?? strength.Value;

    private static VocShare OfComposition(AssessedMaterial material, VocDefinition definition, (string Why, Source Source)? kind)
    {
        if (material.Composition.Count > 0)
        {
            return OfParts(material.Composition, definition, kind);
        }

        return kind is { } rule
            ? Known(0, $"none of it counts: {rule.Why}.", rule.Source)
            : new(Whole, Whole, material.Cas is null ? "no volatile share, substance or composition is stated" : $"no volatile share is stated, and the tables do not know {material.Cas}", [new($"nothing is known of it, so all of it counts.", Careful)]);
    }

    /// <summary>
    /// Parts that are out count by their low end and parts that count by their high end, so that the result is not too
    /// low. What is listed nowhere counts as well, unless <paramref name="rest"/> says why it does not.
    /// </summary>
    /// <param name="most">What the parts and the rest can come to.</param>
    private static VocShare OfParts(
        IEnumerable<StatedSubstance> parts, VocDefinition definition, (string Why, Source Source)? rest, decimal most = Whole)
    {
        var findings = new List<VocFinding>();
        var unknownNames = new SortedSet<string>(StringComparer.Ordinal);
        (decimal surelyOut, decimal counted, decimal unjudged) = (0, 0, 0);
        foreach (StatedSubstance part in parts)
        {
            decimal high = part.StatedPercent ?? part.HighPercent;
            VocJudgement? judgement = VocSubstances.Judge(SubstanceNames.Identity(part.Name, part.Cas), definition);
            if (judgement is null)
            {
                unjudged += high;
                unknownNames.Add(part.Name);
            }
            else if (judgement.Counts)
            {
                counted += high;
                findings.Add(new($"{part.Name}, {high:0.##} % of it, counts: {judgement.Why}.", judgement.Source));
            }
            else
            {
                decimal low = part.StatedPercent ?? part.LowPercent;
                surelyOut += low;
                findings.Add(new($"{part.Name}, {low:0.##} % of it, does not count: {judgement.Why}.", judgement.Source));
            }
        }

        surelyOut = Math.Min(surelyOut, most);
        counted = Math.Min(counted, most - surelyOut);
        decimal open = most - surelyOut - counted;
        decimal unknown = rest is null ? open : Math.Min(unjudged, open);
        findings.AddRange(AboutTheRest(unknown, open, rest));
        return new(counted + unknown, unknown, unknown > 0 ? InWords(unknownNames, rest is null) : null, findings);
    }

    private static IEnumerable<VocFinding> AboutTheRest(decimal unknown, decimal open, (string Why, Source Source)? rest)
    {
        if (unknown > 0)
        {
            yield return new($"{unknown:0.##} % of it is not known, so it counts.", Careful);
        }

        if (rest is { } rule && open > unknown)
        {
            yield return new($"{open - unknown:0.##} % of it does not count: {rule.Why}.", rule.Source);
        }
    }

    private static string InWords(SortedSet<string> names, bool isRestOpen) => (names.Count, isRestOpen) switch
    {
        (0, _) => "not all that is in it is listed",
        (_, true) => $"not all that is in it is listed, and the tables do not know {string.Join(", ", names)}",
        _ => $"the tables do not know {string.Join(", ", names)}",
    };
}
