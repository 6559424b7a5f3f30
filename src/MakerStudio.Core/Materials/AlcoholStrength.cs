namespace MakerStudio.Core.Materials;

/// <summary>What a stated alcohol strength is a share of. A bare "%" or "proof" is none of these.</summary>
public enum AlcoholBasis
{
    /// <summary>Per cent by volume.</summary>
    PercentVolume,

    /// <summary>Per cent by mass.</summary>
    PercentMass,

    /// <summary>US proof: twice the per cent by volume at 60 °F (27 CFR 30.11).</summary>
    UsProof,
}

/// <summary>An alcohol strength with its basis. 0 to 100 for the percentages, 0 to 200 for US proof.</summary>
public sealed record AlcoholStrength
{
    /// <summary>US proof is twice the per cent by volume (27 CFR 30.11).</summary>
    public const decimal UsProofPerPercentVolume = 2m;

    private const decimal Whole = 100m;

    /// <exception cref="ArgumentOutOfRangeException">Outside the range of its basis.</exception>
    public AlcoholStrength(decimal value, AlcoholBasis basis)
    {
        if (!IsPossible(value, basis))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "Percentages run from 0 to 100, US proof from 0 to 200.");
        }

        Value = value;
        Basis = basis;
    }

    public decimal Value { get; }

    public AlcoholBasis Basis { get; }

    /// <summary>
    /// Per cent by volume, or null for a strength by mass: that needs an alcohol table, because alcohol and water
    /// shrink on mixing. US proof is stated at 60 °F; no correction to 20 °C is made.
    /// </summary>
    public decimal? PercentVolume => Basis switch
    {
        AlcoholBasis.PercentVolume => Value,
        AlcoholBasis.UsProof => Value / UsProofPerPercentVolume,
        _ => null,
    };

    /// <summary>The basis in words, to stand behind the number.</summary>
    public string BasisInWords => Basis switch
    {
        AlcoholBasis.PercentVolume => "% vol",
        AlcoholBasis.PercentMass => "% by weight",
        _ => "US proof",
    };

    /// <summary>Whether a number can be a strength on this basis, for validators.</summary>
    public static bool IsPossible(decimal value, AlcoholBasis basis) => basis switch
    {
        AlcoholBasis.PercentVolume or AlcoholBasis.PercentMass => value is >= 0 and <= Whole,
        AlcoholBasis.UsProof => value is >= 0 and <= Whole * UsProofPerPercentVolume,
        _ => false,
    };
}
