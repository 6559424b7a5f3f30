using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Ufi;

/// <summary>What a code says.</summary>
/// <param name="Entity">Null for a country whose table we do not have: then only the check character was looked at.</param>
/// <param name="Number">VAT number without its country letters, or the company key.</param>
public sealed record UfiContent(UfiEntity? Entity, ulong? Number, uint Formulation);

/// <summary>
/// A unique formula identifier (CLP Annex VIII part A, section 5): 16 characters in four blocks. The number of the
/// formulation (28 bits), the country and its VAT number (45 bits) and a version bit make 74 bits, written as 15
/// digits of base 31 in a fixed order, behind a check character. The method is from memory of ECHA's UFI Developers
/// Manual and was proved on 25 published codes.
/// </summary>
public sealed record UfiCode
{
    /// <summary>Largest number of a formulation: 28 bits.</summary>
    public const uint LargestFormulation = (1U << FormulationBits) - 1;

    private const string Alphabet = "0123456789ACDEFGHJKMNPQRSTUVWXY";
    private const string Prefix = "UFI:";
    private const int Base = 31;
    private const int Digits = 15;
    private const int Block = 4;
    private const int FormulationBits = 28;
    private const int GroupBits = 4;
    private const int NumberAndCodeBits = 41;
    private const int PayloadBits = 74;
    private const int LongestTyped = 60;

    private static readonly SearchValues<char> Used = SearchValues.Create(Alphabet);

    /// <summary>Character k + 1 of the code is this digit of the payload.</summary>
    private static readonly int[] Order = [5, 4, 3, 7, 2, 8, 9, 10, 1, 0, 11, 6, 12, 13, 14];

    private UfiCode(string text, UfiContent content) => (Text, Content) = (text, content);

    public static Citation Source { get; } = new("ECHA, UFI Developers Manual; CLP Annex VIII part A, section 5", DataStatus.Derived);

    /// <summary>As it is printed behind "UFI:", with hyphens.</summary>
    public string Text { get; }

    public UfiContent Content { get; }

    /// <param name="number">Digits of the VAT number without its country letters, or the company key.</param>
    /// <param name="formulation">The studio's own number of the composition, 0 to 268,435,455.</param>
    /// <param name="why">What is wrong with the number, for the person who typed it.</param>
    public static bool TryEncode(UfiEntity entity, string? number, uint formulation, [NotNullWhen(true)] out UfiCode? code, [NotNullWhen(false)] out string? why)
    {
        code = null;
        UfiEntry entry = UfiEntry.Of(entity);
        why = WhyNot(entry, number?.Trim() ?? "", formulation);
        if (why is not null)
        {
            return false;
        }

        ulong value = ulong.Parse(number!.Trim(), NumberStyles.None, CultureInfo.InvariantCulture) + entry.Offset;
        UInt128 payload = formulation;
        payload = (payload << GroupBits) | (uint)entry.Group;
        payload = (payload << entry.CodeBits) | entry.Code;
        payload = (payload << entry.NumberBits) | value;
        code = new(Written(payload << 1), new(entity, value - entry.Offset, formulation));
        return true;
    }

    /// <summary>
    /// Reads a code as typed or pasted: with or without "UFI:" and hyphens, in either case. The check character is
    /// looked at for every country, the content only for those whose table is known.
    /// </summary>
    public static bool TryParse(string? typed, [NotNullWhen(true)] out UfiCode? code, [NotNullWhen(false)] out string? why)
    {
        code = null;
        string text = typed is null || typed.Length > LongestTyped ? "" : typed.Trim().ToUpperInvariant();
        text = text.StartsWith(Prefix, StringComparison.Ordinal) ? text[Prefix.Length..].Trim() : text;
        string bare = Bare(text);
        why = WhyNotACode(bare);
        if (why is not null)
        {
            return false;
        }

        UInt128 payload = Payload(bare);
        why = (payload >> PayloadBits) != 0 || (payload & 1) != 0
            ? "The check character of this UFI agrees, but its content is none: part of it may be mistyped."
            : null;
        UfiContent? content = why is null ? Read(payload, out why) : null;
        code = content is null ? null : new(Hyphenated(bare), content);
        return code is not null;
    }

    public override string ToString() => Text;

    private static string? WhyNot(UfiEntry entry, string number, uint formulation)
    {
        if (number.Length == 0 || !number.All(char.IsAsciiDigit))
        {
            return "Type the number in digits, without the letters of the country.";
        }

        if (entry.Digits.Count > 0 && !entry.Digits.Contains(number.Length))
        {
            return $"A VAT number of {entry.Name} has {string.Join(" or ", entry.Digits)} digits; this one has {number.Length}.";
        }

        if (entry.Entity == UfiEntity.Belgium && number[0] is not ('0' or '1'))
        {
            return "A VAT number of BE starts with 0 or 1.";
        }

        if (!ulong.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out ulong value) || value > entry.LargestNumber)
        {
            return $"This number is too large for a {entry.Name}: the largest is {entry.LargestNumber.ToString(CultureInfo.InvariantCulture)}.";
        }

        return formulation > LargestFormulation ? "The number of a formulation is at most 268435455." : null;
    }

    private static string? WhyNotACode(string bare)
    {
        if (bare.Length != Digits + 1)
        {
            return "A UFI has 16 characters in four blocks, for example N1QV-R02N-J00M-WQD5.";
        }

        int strange = bare.AsSpan().IndexOfAnyExcept(Used);
        if (strange >= 0)
        {
            return $"\"{bare[strange]}\" is not used in a UFI: the letters B, I, L, O and Z are left out.";
        }

        return bare[0] == Check(bare.AsSpan(1))
            ? null
            : "The check character of this UFI does not agree with the others: one may be mistyped, or two changed places.";
    }

    /// <summary>Hyphens are taken at their four places only; elsewhere they make the code too long.</summary>
    private static string Bare(string text)
    {
        string[] blocks = text.Split('-');
        return blocks.Length == Block && blocks.All(block => block.Length == Block) ? string.Concat(blocks) : text;
    }

    private static UfiContent? Read(UInt128 payload, out string? why)
    {
        why = null;
        uint formulation = (uint)(payload >> (PayloadBits - FormulationBits));
        int group = (int)((payload >> (NumberAndCodeBits + 1)) & ((1 << GroupBits) - 1));
        ulong rest = (ulong)((payload >> 1) & ((1UL << NumberAndCodeBits) - 1));
        UfiEntry? entry = UfiEntry.All.FirstOrDefault(each => each.Group == group && (rest >> each.NumberBits) == each.Code);
        if (entry is null)
        {
            return new(null, null, formulation);
        }

        ulong value = rest & ((1UL << entry.NumberBits) - 1);
        if (entry.Offset > 0 && value < entry.Offset)
        {
            // Other numbers of this country, with letters; their mapping is not proved.
            return new(null, null, formulation);
        }

        ulong number = value - entry.Offset;
        if (number > entry.LargestNumber)
        {
            why = $"The check character of this UFI agrees, but its number is not one of {entry.Name}.";
            return null;
        }

        return new(entry.Entity, number, formulation);
    }

    private static string Written(UInt128 payload)
    {
        Span<char> digits = stackalloc char[Digits];
        for (int i = Digits - 1; i >= 0; i--)
        {
            digits[i] = Alphabet[(int)(payload % Base)];
            payload /= Base;
        }

        Span<char> code = stackalloc char[Digits + 1];
        for (int i = 0; i < Digits; i++)
        {
            code[i + 1] = digits[Order[i]];
        }

        code[0] = Check(code[1..]);
        return Hyphenated(new string(code));
    }

    private static UInt128 Payload(string bare)
    {
        Span<int> digits = stackalloc int[Digits];
        for (int i = 0; i < Digits; i++)
        {
            digits[Order[i]] = Alphabet.IndexOf(bare[i + 1], StringComparison.Ordinal);
        }

        UInt128 payload = 0;
        foreach (int digit in digits)
        {
            payload = (payload * Base) + (uint)digit;
        }

        return payload;
    }

    /// <summary>Weighted sum of the 15 characters, weights 2 to 16, brought to a multiple of 31.</summary>
    private static char Check(ReadOnlySpan<char> characters)
    {
        const int firstWeight = 2;
        int sum = 0;
        for (int i = 0; i < characters.Length; i++)
        {
            sum += (i + firstWeight) * Alphabet.IndexOf(characters[i], StringComparison.Ordinal);
        }

        return Alphabet[(Base - (sum % Base)) % Base];
    }

    private static string Hyphenated(string bare) => string.Join('-', bare.Chunk(Block).Select(block => new string(block)));
}
