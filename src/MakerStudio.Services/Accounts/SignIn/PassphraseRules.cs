using System.Globalization;
using System.Text;

namespace MakerStudio.Services.Accounts;

/// <summary>
/// What a passphrase must be: long, and not one of those that are tried first. No rule about kinds of characters
/// (NIST SP 800-63B advises against them; from memory).
/// </summary>
public static class PassphraseRules
{
    public const int Shortest = 12;
    public const int Longest = 128;

    /// <summary>Letters that must be left when names and everyday password words are taken out.</summary>
    private const int LettersOfItsOwn = 6;

    private const int FewestKinds = 5;

    /// <summary>Names of one or two letters are in too many words to be looked for.</summary>
    private const int ShortestName = 3;

    /// <summary>Share of steps along a row of the keyboard, the alphabet or the digits at which a text counts as one run.</summary>
    private const double RunShare = 0.7;

    private static readonly string[] Rows = ["1234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm", "qwertzuiop", "yxcvbnm", "azertyuiop", "abcdefghijklmnopqrstuvwxyz"];

    /// <summary>What is wrong with it, in a sentence; null when it will do.</summary>
    /// <param name="names">The person's and the studio's names: a passphrase made of them is guessed first.</param>
    public static string? Problem(string? passphrase, params string?[] names)
    {
        if (string.IsNullOrEmpty(passphrase) || passphrase.Length < Shortest)
        {
            return $"A passphrase has {Shortest} letters or more; a few words in a row are easy to keep.";
        }

        if (passphrase.Length > Longest)
        {
            return $"A passphrase has at most {Longest} letters.";
        }

        var plain = passphrase.ToLowerInvariant();
        var letters = Unmasked(plain);
        return CommonPassphrases.Whole.Contains(plain) || CommonPassphrases.Whole.Contains(letters) ? "This passphrase is on the list of those tried first. Choose words of your own."
            : plain.Distinct().Count() < FewestKinds || IsOneThingRepeated(plain) ? "This passphrase repeats the same few letters. Choose some words instead."
            : IsRun(plain) ? "This passphrase runs along the keyboard or the alphabet. Choose some words instead."
            : Math.Min(Left(letters, names), Left(plain, names)) < LettersOfItsOwn ? "This passphrase is little more than a name, digits or a common password word. Add words of your own."
            : null;
    }

    private static bool IsOneThingRepeated(string text) =>
        Enumerable.Range(1, text.Length / 2).Any(period => Enumerable.Range(period, text.Length - period).All(i => text[i] == text[i - period]));

    private static bool IsRun(string text)
    {
        var steps = text.Zip(text.Skip(1)).Count(pair => Rows.Any(row => AreNeighbours(row, pair.First, pair.Second)));
        return steps >= RunShare * (text.Length - 1);
    }

    private static bool AreNeighbours(string row, char first, char second)
    {
        var (a, b) = (row.IndexOf(first), row.IndexOf(second));
        return a >= 0 && b >= 0 && Math.Abs(a - b) <= 1;
    }

    /// <summary>Undoes the usual swaps of letters for signs: "p@ssw0rd" reads "password".</summary>
    private static string Unmasked(string text) => new([.. text.Select(c => c switch
    {
        '0' => 'o', '1' or '!' => 'i', '3' => 'e', '4' or '@' => 'a', '5' or '$' => 's', '7' => 't', _ => c,
    })]);

    private static int Left(string text, IEnumerable<string?> names)
    {
        var known = names.SelectMany(WordsOf).Where(n => n.Length >= ShortestName).Concat(CommonPassphrases.Words).OrderByDescending(w => w.Length);
        var rest = known.Aggregate(text, (left, word) => left.Replace(word, " ", StringComparison.Ordinal));
        return rest.Count(IsWordPart);
    }

    /// <summary>Letters of every script; those without cases and marks count too.</summary>
    private static bool IsWordPart(char c) =>
        char.IsLetter(c) || char.IsSurrogate(c) || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark;

    private static string[] WordsOf(string? name)
    {
        var whole = (name ?? "").Normalize(NormalizationForm.FormC).ToLowerInvariant();
        return [whole.Replace(" ", "", StringComparison.Ordinal), .. whole.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
    }
}
