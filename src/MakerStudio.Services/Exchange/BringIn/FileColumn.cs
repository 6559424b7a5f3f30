using MakerStudio.Core.Exchange;

namespace MakerStudio.Services.Exchange;

/// <summary>A column of a file that can be brought in.</summary>
/// <param name="Heading">With its unit. A heading without the part in brackets is read too; with another one it is refused.</param>
/// <param name="Kind">Text, a number or a day.</param>
/// <param name="Hint">What to write, for the page and the guide.</param>
/// <param name="IsNeeded">The file must have it; other columns may be left out.</param>
/// <param name="Also">Another heading it is known by: the one our own table has.</param>
/// <param name="IsNumbers">Text that parts several numbers by <see cref="Between"/>.</param>
public sealed record FileColumn(string Heading, CellKind Kind, string Hint, bool IsNeeded = false, string? Also = null, bool IsNumbers = false)
{
    /// <summary>Parts what stands in one cell for several things.</summary>
    public const char Between = '|';

    internal bool HoldsNumbers => Kind == CellKind.Number || IsNumbers;

    /// <summary>Without the unit in brackets.</summary>
    internal string Bare => Heading.Split(" (")[0];

    internal bool IsNamed(string heading) => Same(heading, Heading) || Same(heading, Bare) || (Also is not null && Same(heading, Also));

    /// <summary>The same words with another unit in brackets.</summary>
    internal bool IsNear(string heading) => heading.Contains('(', StringComparison.Ordinal) && Heading.Contains('(', StringComparison.Ordinal) && Same(heading.Split('(')[0].Trim(), Bare);

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
