using MakerStudio.Core.Blending;
using MakerStudio.Core.Curing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>The usual share of scent in a product, as fractions, and what it is a share of.</summary>
/// <param name="Lowest">0 to 1.</param>
/// <param name="Highest">0 to 1, not below the lowest.</param>
/// <param name="Of">"the total", "wax" or "dry weight".</param>
public sealed record LoadRange(decimal Lowest, decimal Highest, string Of)
{
    public bool Holds(decimal fraction) => fraction >= Lowest && fraction <= Highest;
}

/// <summary>
/// A kind of product and the defaults it starts a formula with. Every default can be changed in the formula. Unless
/// a source stands beside a value it is common practice, no source: a starting point for the studio's own trials.
/// </summary>
public abstract class ProductKind
{
    /// <summary>Clock start of what is stirred: the last addition was recorded.</summary>
    protected const string LastAddition = "last addition";

    /// <summary>Clock start of what is poured.</summary>
    protected const string Pour = "pour";

    /// <summary>
    /// How far a single pack of 100 to 200 mL or g may fall short of nominal: 4.5 %
    /// (German FPackV § 9(3); Directive 76/211/EEC, Annex I 2.4).
    /// </summary>
    protected const decimal ShortfallOfMiddlePacks = 0.045m;

    /// <summary>
    /// How far a single pack of 5 to 50 mL or g may fall short of nominal: 9 % (Directive 76/211/EEC, Annex I 2.4).
    /// </summary>
    protected const decimal ShortfallOfSmallPacks = 0.09m;

    /// <summary>Stable name in files and addresses, such as "room-spray-alcohol".</summary>
    public abstract string Key { get; }

    public abstract string Name { get; }

    /// <summary>Letters before the batch number.</summary>
    public abstract string CodePrefix { get; }

    /// <summary>Shortest rest before a check can release it.</summary>
    public abstract TimeSpan CureMin { get; }

    /// <summary>Rest after which it is usually at its best; not below the shortest.</summary>
    public abstract TimeSpan CureIdeal { get; }

    /// <summary>What starts the cure clock, in words.</summary>
    public virtual string ClockStartsAt => LastAddition;

    /// <summary>How it is moved while it rests, or null when it is left alone.</summary>
    public virtual Moving? Moving => Moving.SwirlLiquid;

    /// <summary>How far a single pack may fall short of its nominal quantity, as a fraction of it.</summary>
    public virtual decimal FillToleranceFraction => ShortfallOfMiddlePacks;

    /// <summary>Share of a batch expected to stay in vessels, filters and pipes.</summary>
    public abstract decimal ExpectedLossFraction { get; }

    public virtual LineBasis DefaultBasis => LineBasis.PercentByWeight;

    /// <summary>Usual share of scent, or null where there is no usual one.</summary>
    public abstract LoadRange? UsualLoad { get; }

    /// <summary>The unit of the net quantity on the label: millilitres or grams.</summary>
    public virtual AmountUnit NominalUnit => AmountUnit.Millilitre;

    /// <summary>Usual net quantities, in <see cref="NominalUnit"/>.</summary>
    public abstract IReadOnlyList<decimal> UsualSizes { get; }

    /// <summary>The act of putting it into its container, as a verb.</summary>
    public virtual string FillWord => "fill";

    /// <summary>The act that follows its rest, as a verb: what was poured is packed by then.</summary>
    public virtual string AfterRestWord => FillWord;

    /// <summary>One of what it is put into.</summary>
    public virtual string ContainerWord => "bottle";

    /// <summary>
    /// Categories of the fragrance standards it falls into; where there are two, the stricter limit holds. Empty for
    /// what is used in other formulas.
    /// </summary>
    public abstract IReadOnlyList<FragrancePlacement> FragranceCategories { get; }

    /// <summary>Forms of the VOC rules that may fit it. The studio decides by what its label claims.</summary>
    public abstract IReadOnlyList<VocForm> VocForms { get; }

    /// <summary>Whether it is breathed as a mist rather than as a vapour.</summary>
    public virtual bool IsSprayed => false;

    /// <summary>Whether it is sold as made here, rather than used in other formulas.</summary>
    public virtual bool IsSold => true;

    /// <summary>What a buyer calls it; stands on the label beside the scent's name.</summary>
    public virtual string LabelName => Name.Split(',')[0];

    /// <summary>For whoever uses it, the gravest first; none for what is not sold.</summary>
    public virtual IReadOnlyList<ProductCaution> Cautions => [];
}
