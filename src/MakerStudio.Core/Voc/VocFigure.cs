using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>VOC of a product under one definition. All figures in per cent of the product by weight.</summary>
/// <param name="OtherPercent">VOC that is not from fragrance.</param>
/// <param name="FragranceVocPercent">VOC from fragrance, before the exemption.</param>
/// <param name="FragrancePercent">Fragrance, volatile or not.</param>
/// <param name="OtherUnknown">The part of <paramref name="OtherPercent"/> that is not known and taken as VOC.</param>
/// <param name="FragranceUnknown">The same of <paramref name="FragranceVocPercent"/>.</param>
public sealed record VocFigure(
    VocDefinition Definition,
    decimal OtherPercent,
    decimal FragranceVocPercent,
    decimal FragrancePercent,
    decimal OtherUnknown,
    decimal FragranceUnknown,
    FragranceExemption Exemption)
{
    /// <summary>Fractions of a formula are kept to 12 decimals; this keeps their last digit from deciding a limit.</summary>
    private const int Digits = 8;

    /// <summary>VOC from fragrance that the exemption takes out.</summary>
    public decimal Exempted => Math.Min(FragranceVocPercent, Exemption.Percent);

    /// <summary>What is compared with a limit. What is not known counts.</summary>
    public decimal Percent => decimal.Round(OtherPercent + FragranceVocPercent - Exempted, Digits);

    /// <summary>
    /// A stricter reading of the exemption: its share comes off the whole fragrance, with what is not volatile in it,
    /// and so takes less VOC out.
    /// </summary>
    public decimal CautiousPercent => FragrancePercent > Exemption.Percent
        ? decimal.Round(OtherPercent + (FragranceVocPercent * (1 - (Exemption.Percent / FragrancePercent))), Digits)
        : decimal.Round(OtherPercent, Digits);

    /// <summary>As <see cref="Percent"/>, were nothing of what is not known volatile.</summary>
    public decimal LowestPercent =>
        decimal.Round(OtherPercent - OtherUnknown + Math.Max(0, FragranceVocPercent - FragranceUnknown - Exemption.Percent), Digits);

    /// <summary>Such an air freshener may be outside the rules (40 CFR 59.201(c), 17 CCR 94510, from memory).</summary>
    public bool IsAllFromFragrance => OtherPercent == 0 && FragranceVocPercent > 0;
}

public enum VocVerdict
{
    /// <summary>Not above the limit; equal complies.</summary>
    Complies,
    Exceeds,

    /// <summary>The row has no limit for what is made on that day.</summary>
    NotInForce,
}

/// <summary>The product against one limit that the studio chose.</summary>
/// <param name="Step">Null where none is in force.</param>
/// <param name="Figure">Under the definition and the fragrance exemption that go with the limit.</param>
public sealed record VocComparison(VocLimit Limit, VocLimitStep? Step, VocFigure Figure)
{
    public VocVerdict Verdict => Step is null ? VocVerdict.NotInForce
        : Figure.Percent <= Step.Percent ? VocVerdict.Complies
        : VocVerdict.Exceeds;

    /// <summary>It exceeds only because what is not known counts as VOC.</summary>
    public bool IsDecidedByUnknown => Verdict == VocVerdict.Exceeds && Figure.LowestPercent <= Step!.Percent;
}
