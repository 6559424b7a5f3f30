using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Which materials: every word must stand in the name, the CAS number or a supplier's code or name.</summary>
public sealed record MaterialSearch
{
    public string? Text { get; init; }

    /// <summary>Null takes every kind.</summary>
    public IReadOnlyCollection<MaterialKind>? Kinds { get; init; }
    public StockUnit? StockedIn { get; init; }
    public bool ArchivedToo { get; init; }

    /// <summary>1 to 200.</summary>
    public int Take { get; init; } = 50;

    /// <summary>The last row of the page before; null begins.</summary>
    public MaterialRow? After { get; init; }
}

/// <param name="Density">g/mL.</param>
public sealed record MaterialRow(
    Guid Id, string Name, MaterialKind Kind, string? Cas, StockUnit StockedIn, decimal? Density, bool IsArchived);

public sealed partial class Materials
{
    private const int MostRows = 200;

    /// <summary>More words than this are not looked at.</summary>
    private const int MostWords = 6;

    /// <summary>A page of the list, by name.</summary>
    public async Task<IReadOnlyList<MaterialRow>> FindAsync(MaterialSearch search, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var found = Matching(db, search);
        if (search.After is { } last)
        {
            var name = last.Name.ToLowerInvariant();
            found = found.Where(m => m.Name.ToLower().CompareTo(name) > 0 || (m.Name.ToLower() == name && m.Id > last.Id));
        }

        return await Rows(found.OrderBy(m => m.Name.ToLower()).ThenBy(m => m.Id).Take(Few(search))).ToListAsync(cancel);
    }

    /// <summary>For a field that suggests: names beginning with the text come first.</summary>
    public async Task<IReadOnlyList<MaterialRow>> SuggestAsync(MaterialSearch search, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var start = PlainText.ContainsPattern(search.Text)[1..];
        return await Rows(
            Matching(db, search).OrderBy(m => EF.Functions.ILike(m.Name, start, "\\") ? 0 : 1).ThenBy(m => m.Name.ToLower()).ThenBy(m => m.Id)
                .Take(Few(search))).ToListAsync(cancel);
    }

    /// <summary>One row; null when there is none.</summary>
    public async Task<MaterialRow?> RowAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await Rows(db.Materials.Where(m => m.Id == id)).SingleOrDefaultAsync(cancel);
    }

    private static IQueryable<Material> Matching(StudioDb db, MaterialSearch search)
    {
        IQueryable<Material> found = db.Materials;
        if (!search.ArchivedToo)
        {
            found = found.Where(m => m.ArchivedAt == null);
        }

        if (search.Kinds is { } kinds)
        {
            found = found.Where(m => kinds.Contains(m.Kind));
        }

        if (search.StockedIn is { } unit)
        {
            found = found.Where(m => m.StockedIn == unit);
        }

        foreach (var word in (search.Text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Take(MostWords))
        {
            var pattern = PlainText.ContainsPattern(word);
            found = found.Where(m => EF.Functions.ILike(m.Name, pattern, "\\")
                || EF.Functions.ILike(m.Cas!, pattern, "\\")
                || m.Suppliers.Any(s => EF.Functions.ILike(s.SupplierCode!, pattern, "\\") || EF.Functions.ILike(s.Supplier!.Name, pattern, "\\")));
        }

        return found;
    }

    private static int Few(MaterialSearch search) => Math.Clamp(search.Take, 1, MostRows);

    private static IQueryable<MaterialRow> Rows(IQueryable<Material> found) => found
        .Select(m => new MaterialRow(m.Id, m.Name, m.Kind, m.Cas, m.StockedIn, m.Density, m.ArchivedAt != null));
}
