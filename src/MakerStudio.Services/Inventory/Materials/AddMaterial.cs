using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Puts a new material on the list; its first lot comes with a delivery.</summary>
public sealed record AddMaterial : MaterialForm;

/// <param name="Id">Of the new material.</param>
public sealed record MaterialAdded(Guid Id, string Name);

public sealed partial class Materials
{
    internal static readonly MaterialFormValidator FormShape = new();

    public Task<Outcome<MaterialAdded>> AddAsync(Actor actor, AddMaterial request, CancellationToken cancel = default) =>
        store.RunAsync<AddMaterial, MaterialAdded>(actor, request, FormShape, async command =>
        {
            if (await NameTakenAsync(command, request.Name!, null, cancel) is { } taken)
            {
                return taken;
            }

            var row = await PutAsync(command, request, cancel);
            command.Record("material", row.Id, $"Added {row.Name}", Topics.Materials);
            return new MaterialAdded(row.Id, row.Name);
        }, cancel: cancel);

    /// <summary>A new row with its suppliers; the caller has seen to it that shape and name are good.</summary>
    internal static async Task<Material> PutAsync(Command command, MaterialForm form, CancellationToken cancel)
    {
        var row = new Material { Name = form.Name!, CreatedAt = command.Now };
        Fill(row, form);
        await SetSuppliersAsync(command, row, form, cancel);
        command.Db.Materials.Add(row);
        return row;
    }
}
