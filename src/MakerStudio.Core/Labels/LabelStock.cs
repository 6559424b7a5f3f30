using System.Globalization;

namespace MakerStudio.Core.Labels;

/// <summary>How labels lie on a page. Millimetres, from the page's top left corner.</summary>
/// <param name="Columns">1 to 50.</param>
/// <param name="Rows">1 to 100.</param>
/// <param name="PitchAcross">From the left edge of a label to that of the next; not below its width.</param>
/// <param name="PitchDown">From the top edge of a label to that of the next.</param>
/// <param name="MarginLeft">To the left edge of the first column.</param>
/// <param name="MarginTop">To the top edge of the first row.</param>
public sealed record LabelSheet(
    decimal PageWidth, decimal PageHeight, int Columns, int Rows, decimal PitchAcross, decimal PitchDown, decimal MarginLeft, decimal MarginTop)
{
    public int Places => Columns * Rows;
}

/// <summary>Where one label is printed. Millimetres from the page's top left corner to the label's.</summary>
/// <param name="Page">From 1.</param>
/// <param name="Place">On its page, from 1, row by row.</param>
public sealed record LabelPosition(int Page, int Place, decimal Left, decimal Top);

/// <summary>
/// The labels in the drawer: their size, and how they lie on a sheet; without a sheet every label is a page of its own,
/// as on a roll. Example: 60 × 80 mm, 3 × 3 on A4 with margins of 15 and 28.5 mm.
/// </summary>
/// <param name="Width">mm, 10 to 420.</param>
/// <param name="Height">mm, 10 to 420.</param>
public sealed record LabelStock(decimal Width, decimal Height, LabelSheet? Sheet)
{
    /// <summary>mm; smaller is no label a person can read. Own bound.</summary>
    public const decimal Smallest = 10m;

    /// <summary>mm; the long side of A3.</summary>
    public const decimal Largest = 420m;

    private const int MostColumns = 50;
    private const int MostRows = 100;

    /// <summary>Shift of all labels that a printer may need, mm either way. Own bound.</summary>
    public const decimal LargestOffset = 20m;

    public int PlacesAPage => Sheet?.Places ?? 1;

    /// <summary>What keeps the labels from lying on their page, in sentences; empty where all is well.</summary>
    public IReadOnlyList<string> Problems()
    {
        var problems = new List<string>();
        if (Width is < Smallest or > Largest || Height is < Smallest or > Largest)
        {
            problems.Add("A label is from 10 to 420 mm wide and high.");
        }

        if (Sheet is { } sheet)
        {
            problems.AddRange(ProblemsOf(sheet));
        }

        return problems;
    }

    /// <summary>Where each label goes, in the order of printing.</summary>
    /// <param name="count">1 or more.</param>
    /// <param name="firstPlace">On the first page, 1 to <see cref="PlacesAPage"/>.</param>
    /// <param name="across">Printer offset to the right, mm.</param>
    /// <param name="down">Printer offset down, mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">No label, or a place that the page does not have.</exception>
    public IReadOnlyList<LabelPosition> Positions(int count, int firstPlace = 1, decimal across = 0m, decimal down = 0m)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(firstPlace, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(firstPlace, PlacesAPage);
        return [.. Enumerable.Range(firstPlace - 1, count).Select(index => At(index, across, down))];
    }

    /// <summary>Pages that so many labels take.</summary>
    public int Pages(int count, int firstPlace = 1) => (count + firstPlace - 1 + PlacesAPage - 1) / PlacesAPage;

    private LabelPosition At(int index, decimal across, decimal down)
    {
        int place = index % PlacesAPage;
        (decimal left, decimal top) = Sheet is { } sheet
            ? (sheet.MarginLeft + (place % sheet.Columns * sheet.PitchAcross), sheet.MarginTop + (place / sheet.Columns * sheet.PitchDown))
            : (0m, 0m);
        return new((index / PlacesAPage) + 1, place + 1, left + across, top + down);
    }

    private IEnumerable<string> ProblemsOf(LabelSheet sheet)
    {
        if (sheet.Columns is < 1 or > MostColumns || sheet.Rows is < 1 or > MostRows)
        {
            yield return "A sheet has from 1 to 50 columns and from 1 to 100 rows.";
            yield break;
        }

        if (sheet.MarginLeft < 0 || sheet.MarginTop < 0 || sheet.PageWidth <= 0 || sheet.PageHeight <= 0)
        {
            yield return "Margins are 0 mm or more, and the page is larger than 0 mm.";
            yield break;
        }

        if (sheet.Columns > 1 && sheet.PitchAcross < Width)
        {
            yield return $"Labels overlap across: they are {Mm(Width)} mm wide and repeat every {Mm(sheet.PitchAcross)} mm.";
        }

        if (sheet.Rows > 1 && sheet.PitchDown < Height)
        {
            yield return $"Labels overlap down: they are {Mm(Height)} mm high and repeat every {Mm(sheet.PitchDown)} mm.";
        }

        decimal right = sheet.MarginLeft + ((sheet.Columns - 1) * sheet.PitchAcross) + Width;
        if (right > sheet.PageWidth)
        {
            yield return $"The last column ends at {Mm(right)} mm, and the page is {Mm(sheet.PageWidth)} mm wide.";
        }

        decimal bottom = sheet.MarginTop + ((sheet.Rows - 1) * sheet.PitchDown) + Height;
        if (bottom > sheet.PageHeight)
        {
            yield return $"The last row ends at {Mm(bottom)} mm, and the page is {Mm(sheet.PageHeight)} mm high.";
        }
    }

    private static string Mm(decimal length) => length.ToString("0.##", CultureInfo.InvariantCulture);
}
