namespace MakerStudio.Services.Exchange;

/// <summary>What a file that is brought in holds.</summary>
public enum BringInKind
{
    /// <summary>One row a material.</summary>
    Materials,

    /// <summary>One row a lot that stands on the shelf: opening stock.</summary>
    Lots,

    /// <summary>One row a line of a formula.</summary>
    Formulas,
}

/// <summary>What becomes of a row.</summary>
public enum RowFate
{
    New,

    /// <summary>It is here already as it stands, or there is nothing of it; nothing is done.</summary>
    Skipped,
    Refused,
}

/// <summary>A row and what bringing it in would do.</summary>
/// <param name="Line">Of the file, from 1; the headings stand on line 1.</param>
/// <param name="What">In words: "Fig fragrance oil, fragrance oil, 0.98 g/mL at 20 °C".</param>
/// <param name="Why">Why it is refused or skipped; null for a new one.</param>
/// <param name="Note">What is taken otherwise than it might be expected; null when there is nothing to say.</param>
public sealed record BroughtRow(long Line, string What, RowFate Fate, string? Why, string? Note);

/// <summary>A number of the file that could be read in two ways, while no other shows which mark stands before decimals.</summary>
/// <param name="Typed">As it stands there: "1.234".</param>
public sealed record MarkAsked(long Line, string Column, string Typed);

/// <summary>What bringing a file in would do; nothing is done yet.</summary>
/// <param name="BroughtInAt">When it was done already.</param>
/// <param name="Problems">Why nothing of the file can be read.</param>
/// <param name="NotRead">Headings of columns that are left aside.</param>
/// <param name="Asks">To be answered before anything can be brought in.</param>
/// <param name="Makes">What would be made, in words: "23 materials".</param>
/// <param name="Rows">The part that was asked for.</param>
public sealed record BringInPreview(
    Guid FileId, BringInKind Kind, string Name, DateTimeOffset? BroughtInAt, IReadOnlyList<string> Problems, IReadOnlyList<string> NotRead, MarkAsked? Asks,
    int New, int Skipped, int Refused, string Makes, IReadOnlyList<BroughtRow> Rows)
{
    public int Lines => New + Skipped + Refused;
}
