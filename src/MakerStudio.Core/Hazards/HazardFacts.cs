using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>One class of a substance or material.</summary>
/// <param name="Code">The hazard statement as the sheet has it, with its letters: H360Fd, H350i.</param>
public sealed record HazardEntry(HazardCategory Category, string Code)
{
    public HazardEntry(HazardCategory category)
        : this(category, HazardCategories.Of(category).Code)
    {
    }
}

/// <summary>
/// A specific concentration limit: from this share up the substance gives the category, in place of the generic limit
/// (CLP Art. 10).
/// </summary>
/// <param name="FromPercent">Per cent by weight, above 0 up to 100.</param>
public sealed record SpecificLimit(HazardCategory Category, decimal FromPercent);

/// <summary>The ways of taking in that acute toxicity is judged by; inhalation by the form inhaled.</summary>
public enum AcuteRoute
{
    /// <summary>mg per kg of body weight.</summary>
    Oral,

    /// <summary>mg per kg of body weight.</summary>
    Dermal,

    /// <summary>Parts per million by volume.</summary>
    InhalationGas,

    /// <summary>mg per litre, 4 hours.</summary>
    InhalationVapour,

    /// <summary>mg per litre, 4 hours.</summary>
    InhalationDustOrMist,
}

/// <summary>An acute toxicity estimate, or an LD50 or LC50, in the unit of its route.</summary>
/// <param name="Value">Above 0.</param>
public sealed record AcuteEstimate(AcuteRoute Route, decimal Value);

/// <summary>
/// What is known of the hazards of a substance, or of a material taken as a whole. A class without an entry is taken
/// as "does not have it", unless it is named in <see cref="NotKnown"/>.
/// </summary>
public sealed class HazardFacts
{
    private static readonly HazardClass[] AllClasses = Enum.GetValues<HazardClass>();
    private static readonly int Classes = AllClasses.Length;

    private readonly HazardEntry?[] _worst = new HazardEntry?[Classes];
    private readonly bool[] _unknown = new bool[Classes];
    private readonly bool[] _bears = new bool[Classes];

    /// <exception cref="ArgumentOutOfRangeException">A limit, estimate, M-factor or pH outside its range.</exception>
    public HazardFacts(
        IEnumerable<HazardEntry> entries,
        IEnumerable<SpecificLimit>? limits = null,
        IEnumerable<AcuteEstimate>? estimates = null,
        int? acuteM = null,
        int? chronicM = null,
        bool additivityApplies = true,
        decimal? ph = null,
        bool driesSkin = false,
        IEnumerable<HazardClass>? notKnown = null,
        Citation? from = null)
    {
        Entries = [.. entries];
        Limits = [.. limits ?? []];
        Estimates = [.. estimates ?? []];
        (AcuteM, ChronicM, AdditivityApplies, Ph, DriesSkin, From) = (acuteM, chronicM, additivityApplies, ph, driesSkin, from);
        Check();
        foreach (HazardEntry entry in Entries)
        {
            ref HazardEntry? worst = ref _worst[(int)HazardCategories.ClassOf(entry.Category)];
            worst = worst is null || Precedes(entry, worst) ? entry : worst;
        }

        foreach (HazardClass each in notKnown ?? [])
        {
            _unknown[(int)each] = true;
        }

        IsWhollyUnknown = Array.TrueForAll(_unknown, each => each);
        foreach (HazardClass each in AllClasses)
        {
            _bears[(int)each] = IsUnknown(each) || In(each) is not null;
        }

        _bears[(int)HazardClass.Eye] |= IsCorrosive;
        foreach (AcuteEstimate estimate in Estimates)
        {
            _bears[(int)AcuteRanges.ClassOf(estimate.Route)] = true;
        }
    }

    /// <summary>Nothing is known: no sheet, and no entry in the substance table.</summary>
    public static HazardFacts Unknown { get; } = new([], notKnown: AllClasses);

    /// <summary>Known to have none of the classes.</summary>
    public static HazardFacts NotClassified { get; } = new([]);

    public IReadOnlyList<HazardEntry> Entries { get; }

    public IReadOnlyList<SpecificLimit> Limits { get; }

    public IReadOnlyList<AcuteEstimate> Estimates { get; }

    /// <summary>M-factor for short-term aquatic toxicity: 1, 10, 100 …; null when not stated.</summary>
    public int? AcuteM { get; }

    /// <summary>M-factor for long-term aquatic toxicity.</summary>
    public int? ChronicM { get; }

    /// <summary>False where the effects on skin and eyes do not add up (CLP Annex I, 3.2.3.3.4): acids, bases, some phenols and surfactants.</summary>
    public bool AdditivityApplies { get; }

    /// <summary>pH of the ingredient, 0 to 14.</summary>
    public decimal? Ph { get; }

    /// <summary>The sheet carries EUH066.</summary>
    public bool DriesSkin { get; }

    /// <summary>The sheet or table the facts are from; null when the maker typed them without naming one.</summary>
    public Citation? From { get; }

    public IEnumerable<HazardClass> NotKnown => AllClasses.Where(IsUnknown);

    public bool IsWhollyUnknown { get; }

    /// <summary>Skin Corr. 1 or one of its sub-categories.</summary>
    public bool IsCorrosive => In(HazardClass.Skin) is { } skin && skin.Category != HazardCategory.SkinIrrit2;

    /// <summary>It has the class, an estimate for it, or might have it; a corrosive bears on the eye.</summary>
    public bool BearsOn(HazardClass hazardClass) => _bears[(int)hazardClass];

    /// <summary>The most severe entry of a class.</summary>
    public HazardEntry? In(HazardClass hazardClass) => _worst[(int)hazardClass];

    /// <summary>No entry, and nobody knows whether there should be one.</summary>
    public bool IsUnknown(HazardClass hazardClass) => _unknown[(int)hazardClass] && _worst[(int)hazardClass] is null;

    /// <summary>The lowest specific limit among these categories, in per cent.</summary>
    public decimal? LimitFor(params ReadOnlySpan<HazardCategory> categories)
    {
        decimal? lowest = null;
        foreach (SpecificLimit limit in Limits)
        {
            if (categories.Contains(limit.Category) && !(lowest <= limit.FromPercent))
            {
                lowest = limit.FromPercent;
            }
        }

        return lowest;
    }

    /// <summary>The lowest specific limit of any category of the class, in per cent.</summary>
    public decimal? LimitIn(HazardClass hazardClass)
    {
        decimal? lowest = null;
        foreach (SpecificLimit limit in Limits)
        {
            if (HazardCategories.ClassOf(limit.Category) == hazardClass && !(lowest <= limit.FromPercent))
            {
                lowest = limit.FromPercent;
            }
        }

        return lowest;
    }

    /// <summary>The lowest estimate of the route.</summary>
    public decimal? EstimateFor(AcuteRoute route)
    {
        decimal? lowest = null;
        foreach (AcuteEstimate estimate in Estimates)
        {
            if (estimate.Route == route && !(lowest <= estimate.Value))
            {
                lowest = estimate.Value;
            }
        }

        return lowest;
    }

    /// <summary>
    /// Two accounts of one substance: every class of either, the lower limits and estimates, the higher M-factors.
    /// Known by either counts as known.
    /// </summary>
    public HazardFacts Or(HazardFacts other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return ReferenceEquals(this, other) ? this : new(
            Entries.Union(other.Entries),
            Limits.Union(other.Limits),
            Estimates.Union(other.Estimates),
            Higher(AcuteM, other.AcuteM),
            Higher(ChronicM, other.ChronicM),
            AdditivityApplies && other.AdditivityApplies,
            FartherFromNeutral(Ph, other.Ph),
            DriesSkin || other.DriesSkin,
            NotKnown.Intersect(other.NotKnown),
            From ?? other.From);
    }

    /// <summary>More severe; of one category the statement that says more, then by code, so that order does not matter.</summary>
    private static bool Precedes(HazardEntry entry, HazardEntry other) =>
        HazardCategories.IsMoreSevere(entry.Category, other.Category)
        || (entry.Category == other.Category
            && (entry.Code.Length, StringComparer.Ordinal.Compare(entry.Code, other.Code)).CompareTo((other.Code.Length, 0)) > 0);

    private static int? Higher(int? one, int? other) => one > other ? one : other ?? one;

    private static decimal? FartherFromNeutral(decimal? one, decimal? other)
    {
        const decimal neutral = 7m;
        return one is null || Math.Abs((other ?? neutral) - neutral) > Math.Abs(one.Value - neutral) ? other ?? one : one;
    }

    private void Check()
    {
        const decimal whole = 100m;
        const decimal mostAlkaline = 14m;
        Refuse(Limits.Any(limit => limit.FromPercent is <= 0 or > whole), "A specific limit lies above 0 and at most at 100 %.");
        Refuse(Estimates.Any(estimate => estimate.Value <= 0), "An acute toxicity estimate is above 0.");
        Refuse(AcuteM < 1 || ChronicM < 1, "An M-factor is 1 or more.");
        Refuse(Ph is < 0 or > mostAlkaline, "A pH lies between 0 and 14.");
    }

    private static void Refuse(bool wrong, string why)
    {
        if (wrong)
        {
            throw new ArgumentOutOfRangeException(null, why);
        }
    }
}
