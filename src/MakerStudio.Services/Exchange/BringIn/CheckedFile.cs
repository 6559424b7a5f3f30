using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Exchange;

/// <summary>A row that was looked at, with the cells it was read from.</summary>
/// <param name="Skip">Why nothing is done about it; null for a new or a refused one.</param>
internal sealed record CheckedRow(CsvCells Cells, string What, string? Skip = null, string? Note = null)
{
    public RowFate Fate => Cells.Problems.Count > 0 ? RowFate.Refused : Skip is not null ? RowFate.Skipped : RowFate.New;

    /// <summary>Every reason in one line: "Density (g/mL): “98” cannot be taken. …".</summary>
    public string? Why => Fate == RowFate.Refused ? string.Join(' ', Cells.Problems.Select(p => $"{p.Field}: {p.Problem}")) : Skip;

    public BroughtRow Told => new(Cells.Line, What, Fate, Why, Fate == RowFate.New ? Note : null);
}

/// <summary>A file that was looked through, and how to put it in once no row is refused.</summary>
/// <param name="Makes">In words: "23 materials".</param>
internal sealed record CheckedFile(IReadOnlyList<CheckedRow> Rows, string Makes, Func<Command, CancellationToken, Task> PutAsync);

/// <summary>What a check needs besides the file.</summary>
/// <param name="Currency">ISO 4217.</param>
/// <param name="Command">Set where the check is followed by the writing, so that rows and names are locked first.</param>
internal sealed record CheckContext(StudioDb Db, DateOnly Today, string Currency, Command? Command, CancellationToken Cancel);
