using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Ufi;

/// <summary>
/// Whose number is in a code. Only entries proved on published codes are here; the tables of the other countries are
/// not known to us. A VAT number can be read back out of a code; a company key hides it.
/// </summary>
public enum UfiEntity
{
    /// <summary>A company key of the poison-centre portal: up to 41 bits. Proved on 4 published codes.</summary>
    CompanyKey,

    /// <summary>German VAT number, 9 digits. Proved on 2 published codes.</summary>
    Germany,

    /// <summary>
    /// Belgian VAT number, 10 digits from 0 or 1. Inferred from one published code whose number passes the Belgian
    /// check of 97.
    /// </summary>
    Belgium,

    /// <summary>British VAT number, 9 or 12 digits; 9 proved on 18 published codes. Not accepted for submissions in the EU since 2021.</summary>
    UnitedKingdom,
}

/// <summary>Where the number lies in the payload.</summary>
/// <param name="Group">Country group, 4 bits.</param>
/// <param name="CodeBits">Bits of the country code; the number has 41 less these.</param>
/// <param name="Digits">Allowed lengths of the number as typed; empty for any.</param>
/// <param name="Offset">Added to the number.</param>
internal sealed record UfiEntry(UfiEntity Entity, string Name, int Group, int CodeBits, ulong Code, IReadOnlyList<int> Digits, ulong Offset, Citation From)
{
    private const int NumberAndCodeBits = 41;
    private const ulong UkOffset = 1UL << 40;

    private static readonly Citation Proved = new("ECHA, UFI Developers Manual, table of countries; proved on published codes", DataStatus.Derived);

    public static IReadOnlyList<UfiEntry> All { get; } =
    [
        new(UfiEntity.CompanyKey, "company key", 0, 0, 0, [], 0, Proved),
        new(UfiEntity.UnitedKingdom, "GB", 2, 0, 0, [9, 12], UkOffset, Proved),
        new(UfiEntity.Belgium, "BE", 5, 7, 8, [10], 0, Proved),
        new(UfiEntity.Germany, "DE", 5, 7, 10, [9], 0, Proved),
    ];

    public int NumberBits => NumberAndCodeBits - CodeBits;

    public ulong LargestNumber => Digits.Count == 0 ? (1UL << NumberBits) - 1 : Nines(Digits[^1]);

    public static UfiEntry Of(UfiEntity entity) => All.First(entry => entry.Entity == entity);

    private static ulong Nines(int digits)
    {
        ulong value = 0;
        for (int i = 0; i < digits; i++)
        {
            const ulong digitBase = 10;
            const ulong nine = 9;
            value = (value * digitBase) + nine;
        }

        return value;
    }
}
