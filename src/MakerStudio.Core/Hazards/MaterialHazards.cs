namespace MakerStudio.Core.Hazards;

/// <summary>A substance in a composition.</summary>
/// <param name="Cas">Its CAS number; two entries of one number are one substance. Null: the name decides.</param>
public sealed record ClassifiedSubstance(string Name, string? Cas, HazardFacts Facts)
{
    /// <summary>What two entries of one substance have in common.</summary>
    public string Identity => Cas ?? Name.Trim().ToUpperInvariant();
}

/// <summary>A substance in a material, with the range that the supplier's sheet gives. Per cent by weight.</summary>
public sealed record Constituent
{
    /// <param name="stated">The value the maker was given; it stands in for the range.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share outside 0 to 100 %, or a range the wrong way round.</exception>
    public Constituent(ClassifiedSubstance substance, decimal lowPercent, decimal highPercent, decimal? stated = null)
    {
        const decimal whole = 100m;
        if (lowPercent < 0 || highPercent > whole || lowPercent > highPercent || stated is < 0 or > whole)
        {
            throw new ArgumentOutOfRangeException(nameof(highPercent), highPercent, "A share lies between 0 and 100 %, the low end first.");
        }

        (Substance, LowPercent, HighPercent, StatedPercent) = (substance, lowPercent, highPercent, stated);
    }

    public ClassifiedSubstance Substance { get; }

    public decimal LowPercent { get; }

    public decimal HighPercent { get; }

    public decimal? StatedPercent { get; }

    /// <summary>The stated value, else the worst end: more of a hazardous substance never makes a class milder.</summary>
    public decimal UsedPercent => StatedPercent ?? HighPercent;
}

/// <summary>
/// What is known of a material: the supplier's classes of it as a whole, the substances it is made of, or both.
/// </summary>
public sealed class MaterialHazards
{
    private const decimal Whole = 100m;

    private readonly Lazy<IReadOnlyDictionary<HazardClass, int>> _composed;

    private MaterialHazards(string name, HazardFacts? asSupplied, IReadOnlyList<Constituent> composition)
    {
        (Name, AsSupplied) = (name, asSupplied);
        IsComposed = composition.Count > 0;
        decimal listed = composition.Sum(constituent => constituent.UsedPercent);
        Constituents = composition switch
        {
            [] => [new(new(name, null, asSupplied ?? HazardFacts.Unknown), Whole, Whole)],
            _ when asSupplied is null && listed < Whole => [.. composition, Rest(name, Whole - listed)],
            _ => composition,
        };
        _composed = new(() => HazardAssessment.RanksOf(Constituents));
    }

    public string Name { get; }

    /// <summary>The supplier's classes of the whole material; null when only its composition is known.</summary>
    public HazardFacts? AsSupplied { get; }

    /// <summary>
    /// Never empty: a material without a composition is one constituent, itself. Without the supplier's classes of
    /// the whole, what the list leaves open counts as unknown.
    /// </summary>
    public IReadOnlyList<Constituent> Constituents { get; }

    /// <summary>Substances are listed, not only the whole.</summary>
    public bool IsComposed { get; }

    /// <summary>A material that is one substance.</summary>
    public static MaterialHazards Of(ClassifiedSubstance substance)
    {
        ArgumentNullException.ThrowIfNull(substance);
        return new(substance.Name, null, [new(substance, Whole, Whole)]);
    }

    /// <param name="asSupplied">Classes of the whole, from section 2 of the supplier's sheet.</param>
    /// <param name="composition">From section 3; may be empty. A share is one of the material.</param>
    public static MaterialHazards Of(string name, HazardFacts? asSupplied, IReadOnlyList<Constituent> composition)
    {
        ArgumentNullException.ThrowIfNull(composition);
        return new(name, asSupplied, composition);
    }

    /// <summary>Nothing is known of it.</summary>
    public static MaterialHazards Unknown(string name) => new(name, null, []);

    /// <summary>
    /// Whether the listed substances, judged on their own, give at least the class that the supplier states for the
    /// whole. Where they do not, something is missing from the list, and the whole counts as one ingredient of that
    /// class.
    /// </summary>
    public bool Explains(HazardClass hazardClass) =>
        !IsComposed || AsSupplied?.In(hazardClass) is not { } stated
        || _composed.Value.GetValueOrDefault(hazardClass) >= RankToReach(stated.Category);

    /// <summary>A plain category 1 is accounted for by any of its sub-categories.</summary>
    private static int RankToReach(HazardCategory stated) => HazardCategories.Of(stated switch
    {
        HazardCategory.SkinSens1 => HazardCategory.SkinSens1B,
        HazardCategory.RespSens1 => HazardCategory.RespSens1B,
        HazardCategory.SkinCorr1 => HazardCategory.SkinCorr1C,
        _ => stated,
    }).Rank;

    private static Constituent Rest(string name, decimal percent) =>
        new(new($"rest of {name}", null, HazardFacts.Unknown), percent, percent);
}
