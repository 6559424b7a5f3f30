using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Puts a new material on the list; its first lot comes with a delivery.</summary>
public sealed record AddMaterial : MaterialForm;

/// <param name="Id">Of the new material.</param>
public sealed record MaterialAdded(Guid Id, string Name);

public sealed partial class Materials
{
    private static readonly MaterialFormValidator FormShape = new();

    public Task<Outcome<MaterialAdded>> AddAsync(Actor actor, AddMaterial request, CancellationToken cancel = default) =>
        store.RunAsync<AddMaterial, MaterialAdded>(actor, request, FormShape, async command =>
        {
            if (await NameTakenAsync(command, request.Name!, null, cancel) is { } taken)
            {
                return taken;
            }

            var row = new Material { Name = request.Name!, CreatedAt = command.Now };
            Fill(row, request);
            await SetSuppliersAsync(command, row, request, cancel);
            command.Db.Materials.Add(row);
            command.Record("material", row.Id, $"Added {row.Name}", Topics.Materials);
            return new MaterialAdded(row.Id, row.Name);
        }, cancel: cancel);
}
