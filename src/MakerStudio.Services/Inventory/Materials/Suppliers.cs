using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Gives a supplier another name, everywhere at once, or another address.</summary>
public sealed record ChangeSupplier : StudioRequest
{
    public Guid SupplierId { get; set; }
    public string? Name { get; set; }

    /// <summary>As it stands on an order; several lines.</summary>
    public string? Address { get; set; }

    /// <summary>The version the form was opened with.</summary>
    public uint Version { get; set; }
}

public sealed record AddSupplier : StudioRequest
{
    public string? Name { get; set; }
}

public sealed record SupplierRow(Guid Id, string Name, int Materials, uint Version, string? Address = null);

public sealed record SupplierNameTaken(string Name) : Refusal
{
    public override string Happened => $"There is a supplier named {Name} already.";
    public override string ToDo => "Choose that one, or type another name.";
}

public sealed class AddSupplierValidator : AbstractValidator<AddSupplier>
{
    public AddSupplierValidator() => RuleFor(s => s.Name).OneLine("The supplier’s name", 120).NotEmpty().WithMessage("A supplier needs a name.");
}

public sealed class ChangeSupplierValidator : AbstractValidator<ChangeSupplier>
{
    public ChangeSupplierValidator()
    {
        RuleFor(s => s.Name).OneLine("The supplier’s name", 120).NotEmpty().WithMessage("A supplier needs a name.");
        RuleFor(s => s.Address).SeveralLines("The address", 400);
    }
}

/// <summary>Whom the studio buys from.</summary>
public sealed class Suppliers(StudioStore store)
{
    private static readonly AddSupplierValidator AddShape = new();
    private static readonly ChangeSupplierValidator ChangeShape = new();

    public async Task<IReadOnlyList<SupplierRow>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Suppliers.OrderBy(s => s.Name.ToLower())
            .Select(s => new SupplierRow(s.Id, s.Name, db.MaterialSuppliers.Count(m => m.SupplierId == s.Id), s.Version, s.Address)).ToListAsync(cancel);
    }

    /// <summary>The id of the new supplier, or of the one that has this name already.</summary>
    public Task<Outcome<SupplierRow>> AddAsync(Actor actor, AddSupplier request, CancellationToken cancel = default) =>
        store.RunAsync<AddSupplier, SupplierRow>(actor, request, AddShape, async command =>
        {
            var name = request.Name!.Trim();
            if (await IsTakenAsync(command, name, null, cancel))
            {
                return new SupplierNameTaken(name);
            }

            var row = new Schema.Supplier { Name = name };
            command.Db.Suppliers.Add(row);
            command.Record("supplier", row.Id, $"Added the supplier {name}", Topics.Materials);
            await command.Db.SaveChangesAsync(cancel);
            return new SupplierRow(row.Id, row.Name, 0, row.Version);
        }, cancel: cancel);

    public Task<Outcome<Nothing>> ChangeAsync(Actor actor, ChangeSupplier request, CancellationToken cancel = default) =>
        store.RunAsync<ChangeSupplier, Nothing>(actor, request, ChangeShape, async command =>
        {
            var name = request.Name!.Trim();
            if (await IsTakenAsync(command, name, request.SupplierId, cancel))
            {
                return new SupplierNameTaken(name);
            }

            var row = await command.Db.Suppliers.SingleOrDefaultAsync(s => s.Id == request.SupplierId, cancel);
            if (row is null)
            {
                return new NotFound("This supplier");
            }

            command.ExpectVersion(row, request.Version);
            var address = string.IsNullOrWhiteSpace(request.Address) ? null : request.Address.Trim();
            var changes = new[] { name == row.Name ? null : $"renamed to {name}", address == row.Address ? null : "its address" }.Where(c => c is not null);
            command.Record("supplier", row.Id, $"Changed the supplier {row.Name}: {string.Join(", ", changes)}", Topics.Materials);
            (row.Name, row.Address) = (name, address);
            return await command.TrySaveAsync() ? Nothing.Value : new Stale("the supplier", "Somebody");
        }, cancel: cancel);

    /// <summary>Names take turns, so that two spellings typed at once do not both pass.</summary>
    private static async Task<bool> IsTakenAsync(Command command, string name, Guid? except, CancellationToken cancel)
    {
        await command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('supplier names'))", cancel);
        var lower = name.ToLowerInvariant();
        return await command.Db.Suppliers.AnyAsync(s => s.Name.ToLower() == lower && s.Id != except, cancel);
    }
}
