using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What the studio buys and stocks: one file a use case in this folder.</summary>
public sealed partial class Materials(StudioStore store)
{
    /// <summary>What is typed of every material that is not archived, by name.</summary>
    public async Task<IReadOnlyList<ChangeMaterial>> FormsAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await FormsAsync(db, cancel);
    }

    internal static async Task<IReadOnlyList<ChangeMaterial>> FormsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await db.Materials.AsNoTracking().Where(m => m.ArchivedAt == null).OrderBy(m => m.Name)
            .Include(m => m.Suppliers).ThenInclude(s => s.Supplier).ToListAsync(cancel);
        return rows.ConvertAll(FormOf);
    }

    /// <summary>The row of a material, locked until the command ends; null when there is none.</summary>
    private static async Task<Material?> LockMaterialAsync(Command command, Guid id, CancellationToken cancel)
    {
        var found = await command.Db.Materials.FromSql($"select *, xmin from materials where id = {id} for update").ToListAsync(cancel);
        return found.SingleOrDefault();
    }
}
