using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>What a substance usually is in a fragrance.</summary>
public enum SubstanceRole
{
    Solvent,
    Carrier,
    Fixative,
    Aroma,
}

/// <param name="At">Temperature the density was measured at.</param>
public sealed record DensityAt(Density Density, Celsius At);

/// <summary>
/// A flash point from published lists, °C. <paramref name="Celsius"/> is the lowest value not set aside as an outlier,
/// since a low value is the cautious one.
/// </summary>
/// <param name="IsAtLeast">The lists say "above" this value and give none.</param>
public sealed record FlashPointValue(double Celsius, bool IsAtLeast, double? Lowest, double? Highest);

/// <summary>% by volume in air. The lower of the published lower limits, the higher of the upper ones.</summary>
public sealed record ExplosiveLimits(double LowerPercent, double? UpperPercent);

/// <summary>A substance of the built-in table. Where a supplier's safety data sheet says otherwise, the sheet holds.</summary>
/// <param name="MolarMass">g/mol, from the formula.</param>
/// <param name="MixesWithWater">In every proportion at room temperature; common knowledge, no source.</param>
/// <param name="BoilingPoint">°C at 101.325 kPa.</param>
/// <param name="FlashPoint">Null for water, which does not burn.</param>
/// <param name="Antoine">One or more sets; choose with <see cref="AntoineNear"/>.</param>
/// <param name="Note">What to know about the figures; empty where there is nothing.</param>
public sealed record Substance(
    CasNumber Cas,
    string Name,
    string Formula,
    double MolarMass,
    SubstanceRole Role,
    bool MixesWithWater,
    Sourced<DensityAt> Density,
    Sourced<double>? BoilingPoint,
    Sourced<FlashPointValue>? FlashPoint,
    VapourPressurePair? VapourPressure,
    IReadOnlyList<Antoine> Antoine,
    Sourced<ExplosiveLimits>? ExplosiveLimits,
    string Note)
{
    /// <summary>Pa, exactly (SI brochure).</summary>
    public const double StandardAtmosphere = 101_325;

    /// <summary>Whether it is known not to burn; water is the only one in the table.</summary>
    public bool DoesNotBurn => Cas.Text == Substances.WaterCas;

    /// <summary>
    /// The set whose range holds the temperature or lies nearest to it, the first listed of equals. Where there is no
    /// set, a line through the vapour pressure at room temperature and the boiling point; null where those are missing.
    /// </summary>
    public Antoine? AntoineNear(double kelvin) =>
        Antoine.Count > 0 ? Antoine.MinBy(set => set.Outside(kelvin)) : ThroughTwoPoints();

    private Antoine? ThroughTwoPoints()
    {
        (double Celsius, double Pascal)? point = VapourPressure switch
        {
            { At25: { } at25 } => (25, at25),
            { At20: { } at20 } => (20, at20),
            _ => null,
        };
        if (point is not { } low || BoilingPoint is not { } boiling)
        {
            return null;
        }

        DataStatus weakest = boiling.Source.Status is DataStatus.Memory ? DataStatus.Memory : VapourPressure!.Source.Status;
        return Materials.Antoine.Through(
            low.Celsius + Materials.Antoine.ZeroCelsius,
            low.Pascal,
            boiling.Value + Materials.Antoine.ZeroCelsius,
            StandardAtmosphere,
            new($"vapour pressure ({VapourPressure!.Source.Citation}) and boiling point ({boiling.Source.Citation})", weakest));
    }
}
