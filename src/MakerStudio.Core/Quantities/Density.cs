using System.Text.Json.Serialization;

namespace MakerStudio.Core.Quantities;

/// <summary>
/// Density in grams per millilitre, from 0.1 to 5. The range is the house's own: nothing in a home-fragrance
/// studio is lighter than loose dry flowers or heavier than glass and minerals, so a value beyond it is a slip
/// (kg/m³, say).
/// </summary>
public readonly record struct Density : IComparable<Density>
{
    /// <summary>Lowest density taken, g/mL.</summary>
    public const decimal Lowest = 0.1m;

    /// <summary>Highest density taken, g/mL.</summary>
    public const decimal Highest = 5m;

    private readonly decimal _gramsPerMillilitre;

    /// <exception cref="ArgumentOutOfRangeException">Below 0.1 or above 5 g/mL.</exception>
    [JsonConstructor]
    public Density(decimal gramsPerMillilitre)
    {
        if (!IsPossible(gramsPerMillilitre))
        {
            throw new ArgumentOutOfRangeException(
                nameof(gramsPerMillilitre), gramsPerMillilitre, "A density lies between 0.1 and 5 g/mL.");
        }

        _gramsPerMillilitre = gramsPerMillilitre;
    }

    /// <summary>Grams per millilitre. A density that was never set (default) throws when read: unknown is not zero.</summary>
    public decimal GramsPerMillilitre => _gramsPerMillilitre != 0
        ? _gramsPerMillilitre
        : throw new InvalidOperationException("This density was never set. Use a nullable Density for an unknown one.");

    public static Density FromGramsPerMillilitre(decimal gramsPerMillilitre) => new(gramsPerMillilitre);

    /// <summary>Whether a number can be a density, for validators.</summary>
    public static bool IsPossible(decimal gramsPerMillilitre) => gramsPerMillilitre is >= Lowest and <= Highest;

    /// <summary>The density a number states; null when there is none, or none that can be.</summary>
    public static Density? WherePossible(decimal? gramsPerMillilitre) =>
        gramsPerMillilitre is { } grams && IsPossible(grams) ? new Density(grams) : null;

    /// <summary>The mass of a volume, rounded to the nearest milligram.</summary>
    public Mass MassOf(Volume volume) => Mass.RoundGrams(volume.Millilitres * GramsPerMillilitre);

    /// <summary>The volume of a mass, unrounded.</summary>
    public Volume VolumeOf(Mass mass) => Volume.FromMillilitres(mass.Grams / GramsPerMillilitre);

    public int CompareTo(Density other) => _gramsPerMillilitre.CompareTo(other._gramsPerMillilitre);

    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{_gramsPerMillilitre} g/mL");

    public static bool operator <(Density left, Density right) => left.CompareTo(right) < 0;

    public static bool operator >(Density left, Density right) => left.CompareTo(right) > 0;

    public static bool operator <=(Density left, Density right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Density left, Density right) => left.CompareTo(right) >= 0;
}
