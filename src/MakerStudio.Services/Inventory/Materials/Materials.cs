using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What the studio buys and stocks: one file a use case in this folder.</summary>
public sealed partial class Materials(StudioStore store)
{
    /// <summary>The row of a material, locked until the command ends; null when there is none.</summary>
    private static async Task<Material?> LockMaterialAsync(Command command, Guid id, CancellationToken cancel)
    {
        var found = await command.Db.Materials.FromSql($"select *, xmin from materials where id = {id} for update").ToListAsync(cancel);
        return found.SingleOrDefault();
    }
}
