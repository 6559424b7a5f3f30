using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Changes a material. What was made from it before keeps the values it was made with.</summary>
public sealed record ChangeMaterial : MaterialForm
{
    public Guid MaterialId { get; set; }

    /// <summary>The version the form was opened with.</summary>
    public uint Version { get; set; }
}

/// <summary>The other person's version, whole, so that the form can show both.</summary>
public sealed record MaterialStale(ChangeMaterial Theirs, string ChangedBy, DateTimeOffset ChangedAt) : Refusal
{
    public override string Happened => $"{ChangedBy} changed {Theirs.Name} while you had it open.";
    public override string Kept => "What you typed is kept here, and nothing of theirs is lost.";
    public override string ToDo => "Look at both, then save again.";
}

/// <summary>Grams and pieces do not mix in one ledger.</summary>
public sealed record StockedInFixed(string Name, StockUnit Now) : Refusal
{
    public override string Happened => $"{Name} has lots already, so it stays stocked in {(Now == StockUnit.Gram ? "grams" : "pieces")}.";
    public override string ToDo => "Add a second material for the other unit.";
}

public sealed partial class Materials
{
    /// <summary>The form to change a material by, as it stands now; null when there is none.</summary>
    public async Task<ChangeMaterial?> FormAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var row = await db.Materials.Include(m => m.Suppliers).ThenInclude(s => s.Supplier).SingleOrDefaultAsync(m => m.Id == id, cancel);
        return row is null ? null : FormOf(row);
    }

    /// <summary>Whether grams or each can still be chosen: not once a lot exists.</summary>
    public async Task<bool> IsStockUnitFixedAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Lots.AnyAsync(l => l.MaterialId == id, cancel);
    }

    public Task<Outcome<Nothing>> ChangeAsync(Actor actor, ChangeMaterial request, CancellationToken cancel = default) =>
        store.RunAsync<ChangeMaterial, Nothing>(actor, request, FormShape, async command =>
        {
            var row = await LockMaterialAsync(command, request.MaterialId, cancel);
            if (row is null)
            {
                return new NotFound("This material");
            }

            await command.Db.Entry(row).Collection(m => m.Suppliers).Query().Include(s => s.Supplier).LoadAsync(cancel);
            if (row.Version != request.Version)
            {
                return await StaleAsync(command, row, cancel);
            }

            if (row.StockedIn != request.StockedIn && await command.Db.Lots.AnyAsync(l => l.MaterialId == row.Id, cancel))
            {
                return new StockedInFixed(row.Name, row.StockedIn);
            }

            if (row.ArchivedAt is null && !Same(request.Name, row.Name) && await NameTakenAsync(command, request.Name!, row.Id, cancel) is { } taken)
            {
                return taken;
            }

            var before = FormOf(row);
            Fill(row, request);
            await SetSuppliersAsync(command, row, request, cancel);

            // A change of the suppliers alone must also make a form opened before it stale.
            command.Db.Entry(row).Property(m => m.Name).IsModified = true;
            command.Record("material", row.Id, MaterialFields.WhatChanged(before, FormOf(row)), Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    private static async Task<MaterialStale> StaleAsync(Command command, Material row, CancellationToken cancel)
    {
        var last = await command.Db.Acts.Where(a => a.Subject == "material" && a.SubjectId == row.Id).OrderByDescending(a => a.Id)
            .Join(command.Db.Users, a => a.PersonId, p => p.Id, (a, p) => new { p.DisplayName, a.At }).FirstOrDefaultAsync(cancel);
        return new MaterialStale(FormOf(row), last?.DisplayName ?? "Somebody", last?.At ?? row.CreatedAt);
    }
}
