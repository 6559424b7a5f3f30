using System.Text.RegularExpressions;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>The find-or-scan field: codes of lots and batches, names of formulas and materials.</summary>
public sealed partial class Finder(StudioStore store)
{
    private const int MostOfAKind = 12;
    private const int LongestText = 120;

    /// <summary>Everything that fits the text; an exact code comes first and alone is worth going to at once.</summary>
    public async Task<Findings> FindAsync(string? text, CancellationToken cancel = default)
    {
        var sought = (text ?? "").Trim();
        if (sought.Length is 0 or > LongestText)
        {
            return new Findings(sought, [], []);
        }

        // Codes have no letter O: a typed O is a zero.
        var code = CodeShape().IsMatch(sought) ? CodeOf(sought) : null;
        await using var db = await store.ReadAsync(cancel);
        var found = code is null ? [] : await ByCodeAsync(db, code, cancel);
        if (found.Count == 0)
        {
            found = await ByNameAsync(db, PlainText.ContainsPattern(sought), cancel);
        }

        return new Findings(sought, found, found.Count == 0 && code is not null ? await NearestAsync(db, code, cancel) : []);
    }

    private static async Task<List<Finding>> ByCodeAsync(StudioDb db, string code, CancellationToken cancel)
    {
        var batches = await db.Batches.Where(b => b.Code == code)
            .Select(b => new Finding(FindingKind.Batch, b.Code, b.ScentName, b.Id, b.State)).ToListAsync(cancel);
        var lots = await db.Lots.Where(l => l.Code == code)
            .Select(l => new Finding(FindingKind.Lot, l.Code, l.Material!.Name, l.Id, null)).ToListAsync(cancel);
        var deliveries = await db.Deliveries.Where(d => d.Code == code)
            .Select(d => new Finding(FindingKind.Delivery, d.Code, d.Supplier!.Name, d.Id, null)).ToListAsync(cancel);
        return [.. batches, .. lots, .. deliveries];
    }

    private static async Task<List<Finding>> ByNameAsync(StudioDb db, string pattern, CancellationToken cancel)
    {
        var formulas = await db.Formulas.Where(f => f.ArchivedAt == null && EF.Functions.ILike(f.Name, pattern))
            .OrderBy(f => f.Name).Take(MostOfAKind).Select(f => new Finding(FindingKind.Formula, f.Name, f.ProductKind, f.Id, null)).ToListAsync(cancel);
        var materials = await db.Materials.Where(m => m.ArchivedAt == null && EF.Functions.ILike(m.Name, pattern))
            .OrderBy(m => m.Name).Take(MostOfAKind).Select(m => new Finding(FindingKind.Material, m.Name, "", m.Id, null)).ToListAsync(cancel);
        var lots = await db.Lots.Where(l => l.SupplierLot != null && EF.Functions.ILike(l.SupplierLot, pattern))
            .OrderBy(l => l.Code).Take(MostOfAKind).Select(l => new Finding(FindingKind.Lot, l.Code, l.Material!.Name, l.Id, null)).ToListAsync(cancel);
        return [.. formulas, .. materials, .. lots];
    }

    /// <summary>Codes of the same series: those whose number begins alike, else the newest few.</summary>
    private static async Task<List<Finding>> NearestAsync(StudioDb db, string code, CancellationToken cancel)
    {
        var series = code[..(code.IndexOf('-', StringComparison.Ordinal) + 1)] + "%";
        var batches = await db.Batches.Where(b => EF.Functions.Like(b.Code, series)).OrderByDescending(b => b.Id).Take(MostOfAKind)
            .Select(b => new Finding(FindingKind.Batch, b.Code, b.ScentName, b.Id, b.State)).ToListAsync(cancel);
        var lots = await db.Lots.Where(l => EF.Functions.Like(l.Code, series)).OrderByDescending(l => l.Id).Take(MostOfAKind)
            .Select(l => new Finding(FindingKind.Lot, l.Code, l.Material!.Name, l.Id, null)).ToListAsync(cancel);
        return [.. batches.Concat(lots).OrderByDescending(f => code.StartsWith(f.Name, StringComparison.Ordinal) || f.Name.StartsWith(code, StringComparison.Ordinal)).Take(5)];
    }

    private static string CodeOf(string text)
    {
        var upper = text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        var dash = upper.IndexOf('-', StringComparison.Ordinal);
        if (dash < 0)
        {
            dash = upper.TakeWhile(char.IsAsciiLetter).Count();
            upper = upper.Insert(dash, "-");
        }

        return string.Concat(upper.AsSpan(0, dash), upper[dash..].Replace('O', '0'));
    }

    [GeneratedRegex(@"^\s*[A-Za-z]{1,3}\s*-?\s*[0-9Oo]{1,6}\s*$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 100)]
    private static partial Regex CodeShape();
}

public enum FindingKind { Batch, Lot, Delivery, Formula, Material }

/// <param name="Name">Code of a batch, lot or delivery; name of a formula or material.</param>
/// <param name="About">Scent, material or supplier it belongs to; product kind of a formula.</param>
public sealed record Finding(FindingKind Kind, string Name, string About, Guid Id, BatchState? State);

/// <param name="Nearest">Codes like the one sought, when it was not found.</param>
public sealed record Findings(string Sought, IReadOnlyList<Finding> Found, IReadOnlyList<Finding> Nearest);
