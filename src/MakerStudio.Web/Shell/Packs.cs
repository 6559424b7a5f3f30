using System.Globalization;
using System.Text.RegularExpressions;
using MakerStudio.Core.Products;

namespace MakerStudio.Web.Shell;

/// <summary>
/// Filled units in words. A size is named by the studio: "100 mL", or with its own container, "180 g tin", which then
/// counts as tins. A name that is no quantity stands behind a comma.
/// </summary>
public static partial class Packs
{
    /// <summary>"1 bottle", "46 bottles of 100 mL", "24 tins of 180 g"; "46 saleable bottles of 100 mL" with a word before.</summary>
    public static string Count(int count, string productKind, string? size = null, string? before = null)
    {
        var measure = NamedBy(size)?.Groups["measure"].Value;
        var word = Word(productKind, size);
        var of = measure is not null ? $" of {measure}" : size is null ? "" : $", {size.Trim()}";
        return $"{count.ToString("N0", CultureInfo.CurrentCulture)} {(before is null ? "" : before + " ")}{(count == 1 ? word : Plural(word))}{of}";
    }

    /// <summary>One of what it is filled into: "bottle", or "tin" where the size says so.</summary>
    public static string Word(string productKind, string? size) =>
        NamedBy(size)?.Groups["word"] is { Success: true } own ? own.Value : ProductKinds.Get(productKind).ContainerWord;

    public static string Words(string productKind, string? size) => Plural(Word(productKind, size));

    private static Match? NamedBy(string? size) => size is not null && Named().Match(size.Trim()) is { Success: true } match ? match : null;

    private static string Plural(string word) =>
        word.EndsWith('s') || word.EndsWith('x') || word.EndsWith("ch", StringComparison.Ordinal) || word.EndsWith("sh", StringComparison.Ordinal) ? word + "es" : word + "s";

    [GeneratedRegex(@"^(?<measure>[0-9][0-9.,]*\s?(mL|g|L|kg))(\s(?<word>\p{L}{2,20}))?$")]
    private static partial Regex Named();
}
