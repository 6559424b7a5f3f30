using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>How far a vapour pressure is known.</summary>
public enum VapourReading
{
    Value,

    /// <summary>"Less than" the figure.</summary>
    AtMost,

    /// <summary>Carried far outside its range: the order of magnitude only.</summary>
    Rough,
}

/// <param name="MillimetresOfMercury">At 20 °C.</param>
public sealed record Vapour(double MillimetresOfMercury, VapourReading Reading)
{
    /// <summary>A rough figure may be ten times too low; it must pass even so.</summary>
    private const double RoughFactor = 10;

    public bool IsSurelyBelow(double limit) => Reading switch
    {
        VapourReading.AtMost => MillimetresOfMercury <= limit,
        VapourReading.Rough => MillimetresOfMercury * RoughFactor < limit,
        _ => MillimetresOfMercury < limit,
    };
}

/// <summary>Whether a substance counts, and by which part of which rule.</summary>
/// <param name="Why">In words, to follow "because".</param>
/// <param name="Source">The rule and the figure it was put to, as well known as the lesser of the two.</param>
public sealed record VocJudgement(bool Counts, string Why, Source Source);

/// <summary>What decides whether a substance counts as a volatile organic compound. Null is "not known".</summary>
/// <param name="IsOrganic">False for water, salts and carbonates.</param>
/// <param name="FewestCarbonAtoms">In the molecule; of a mixture, in its smallest.</param>
/// <param name="BoilingFrom">°C at normal pressure; the low end of a range.</param>
/// <param name="IsSolid">Melts above 20 °C.</param>
public sealed record VocSubstance(
    string Cas,
    string Name,
    bool IsOrganic,
    int? FewestCarbonAtoms,
    Vapour? Vapour,
    double? BoilingFrom,
    bool IsSolid,
    bool Sublimes,
    Source Source,
    string Note)
{
    /// <summary>mmHg at 20 °C: 40 CFR 59.203(f), 17 CCR 94508.</summary>
    public const double LowVapourPressure = 0.1;

    /// <summary>More carbon atoms than this: the same.</summary>
    public const int ManyCarbonAtoms = 12;

    /// <summary>°C, to be boiled above: 17 CCR 94508.</summary>
    public const double HighBoiling = 216;

    private static readonly Source WhatIsVoc = new("40 CFR 51.100(s); 17 CCR 94508", DataStatus.Memory);
    private static readonly Source FederalLow = new("40 CFR 59.203(f)", DataStatus.Secondary);
    private static readonly Source CaliforniaLow = new("17 CCR 94508, LVP-VOC", DataStatus.Read);

    /// <summary>
    /// Listed as hardly reactive: acetone, 1,1-difluoroethane, trans-1,3,3,3-tetrafluoropropene. From memory of the lists.
    /// </summary>
    private static readonly string[] ExemptEverywhere = ["67-64-1", "75-37-6", "29118-24-9"];

    /// <summary>tert-Butyl acetate; counted in California here, to be careful.</summary>
    private const string ExemptFederally = "540-88-5";

    public VocJudgement Judge(VocDefinition definition)
    {
        if (!IsOrganic)
        {
            return new(false, "water, a salt or a carbonate is no VOC", WhatIsVoc);
        }

        bool isFederal = definition == VocDefinition.UsFederal;
        if (ExemptEverywhere.Contains(Cas) || (isFederal && Cas == ExemptFederally))
        {
            return new(false, "it is listed as hardly reactive", WhatIsVoc);
        }

        return (isFederal ? WhyLowFederally() : WhyLowInCalifornia()) is { } why
            ? new(false, why, With(isFederal ? FederalLow : CaliforniaLow))
            : new(true, "nothing takes it out", With(WhatIsVoc));
    }

    private bool HasLowVapour => Vapour?.IsSurelyBelow(LowVapourPressure) is true;

    private bool HasManyCarbonAtoms => FewestCarbonAtoms > ManyCarbonAtoms;

    private string? WhyLowFederally() => this switch
    {
        { HasLowVapour: true } => "its vapour pressure is below 0.1 mmHg at 20 °C",
        { Vapour: null, HasManyCarbonAtoms: true } => "it has more than 12 carbon atoms and no known vapour pressure",
        { Vapour: null, IsSolid: true, Sublimes: false } => "it melts above 20 °C, does not sublime and has no known vapour pressure",
        _ => null,
    };

    private string? WhyLowInCalifornia() => this switch
    {
        { HasLowVapour: true } => "(A) its vapour pressure is below 0.1 mmHg at 20 °C",
        { Vapour: null, BoilingFrom: null, HasManyCarbonAtoms: true } => "(B) it has more than 12 carbon atoms and no known vapour pressure or boiling point",
        { BoilingFrom: > HighBoiling } => "(C) it boils above 216 °C",
        _ => null,
    };

    private Source With(Source rule) => new($"{rule.Citation}; figures: {Source.Citation}", DataStatuses.Weaker(rule.Status, Source.Status));
}
