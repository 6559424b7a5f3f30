namespace MakerStudio.Core.Quantities;

/// <summary>A volume in millilitres. It is a view of a mass at a density: stock is kept by mass.</summary>
public readonly record struct Volume : IComparable<Volume>
{
    private Volume(decimal millilitres) => Millilitres = millilitres;

    public static Volume Zero => default;

    public decimal Millilitres { get; }

    public static Volume FromMillilitres(decimal millilitres) => new(millilitres);

    public int CompareTo(Volume other) => Millilitres.CompareTo(other.Millilitres);

    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Millilitres} mL");

    public static Volume operator +(Volume left, Volume right) => new(left.Millilitres + right.Millilitres);

    public static Volume operator -(Volume left, Volume right) => new(left.Millilitres - right.Millilitres);

    public static bool operator <(Volume left, Volume right) => left.Millilitres < right.Millilitres;

    public static bool operator >(Volume left, Volume right) => left.Millilitres > right.Millilitres;

    public static bool operator <=(Volume left, Volume right) => left.Millilitres <= right.Millilitres;

    public static bool operator >=(Volume left, Volume right) => left.Millilitres >= right.Millilitres;
}
