using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Assessing;

/// <param name="Fraction">Share of the total by weight, 0 to 1.</param>
/// <param name="Basis">As typed: drops do for a trial, not for a formula that is released.</param>
public sealed record AssessedLine(Guid LineId, AssessedMaterial Material, decimal Fraction, LineBasis Basis = LineBasis.PercentByWeight);

/// <summary>What somebody measured of the finished mixture; null where nobody did.</summary>
/// <param name="Density">At 20 °C.</param>
/// <param name="FlashPoint">Closed cup.</param>
/// <param name="BoilingPoint">Initial.</param>
/// <param name="SustainsCombustion">Result of the UN test L.2.</param>
/// <param name="ViscosityMm2PerSecond">Kinematic, at 40 °C.</param>
/// <param name="Ph">0 to 14; only for mixtures with water.</param>
public sealed record MeasuredFacts(
    Density? Density = null,
    Celsius? FlashPoint = null,
    Celsius? BoilingPoint = null,
    bool? SustainsCombustion = null,
    decimal? ViscosityMm2PerSecond = null,
    decimal? Ph = null)
{
    public static MeasuredFacts None { get; } = new();
}

/// <summary>A formula with all that is known of its materials: the one input of an assessment.</summary>
/// <param name="Lines">In the order of addition; fractions sum to 1.</param>
/// <param name="PackMillilitres">Capacity of the smallest pack it is sold in; null where none is decided.</param>
/// <param name="EnoughScent">From the studio's own trials: the share of scent, as a fraction of what the kind's load is a share of, above which more stopped helping; null where not tried.</param>
/// <param name="HasSealedSpray">Whether the sprayer is sealed on, so that nobody can drink from the pack; null where nobody said, which is taken as no.</param>
public sealed record AssessedFormula(
    ProductKind Kind,
    IReadOnlyList<AssessedLine> Lines,
    MeasuredFacts Measured,
    decimal? PackMillilitres = null,
    decimal? EnoughScent = null,
    bool? HasSealedSpray = null);
