using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

/// <summary>The words for what an amount of a formula line is counted in, written and read.</summary>
public static class LineBases
{
    private static readonly LineBasis[] All = Enum.GetValues<LineBasis>();

    public static string Name(LineBasis basis) => basis switch
    {
        LineBasis.PartsByWeight => "parts by weight",
        LineBasis.PartsByVolume => "parts by volume",
        LineBasis.PercentByWeight => "% by weight",
        LineBasis.PercentByVolume => "% by volume",
        LineBasis.PercentOfWax => "% of wax",
        LineBasis.Grams => "g",
        LineBasis.Millilitres => "mL",
        LineBasis.Drops => "drops",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, null),
    };

    /// <summary>The basis, or a sentence that says why it is not known. A bare "%" or "parts" could be several and is asked about.</summary>
    public static (LineBasis? Basis, string? Why) Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var known = UnitWords.Find(text.Trim());
        foreach (var basis in All)
        {
            if (string.Equals(Name(basis), text.Trim(), StringComparison.OrdinalIgnoreCase) || (known is not null && known == UnitWords.Find(Name(basis))))
            {
                return (basis, null);
            }
        }

        return (null, UnitWords.Question(text.Trim()) is { } question
            ? $"{question.Question} Write one of: {string.Join(", ", question.Choices)}."
            : $"“{text}” is none of: {string.Join(", ", All.Select(Name))}.");
    }
}
