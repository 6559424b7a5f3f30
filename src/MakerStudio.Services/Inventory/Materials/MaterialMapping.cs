using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

public sealed partial class Materials
{
    /// <summary>A drop is calibrated by weighing this many.</summary>
    private const int DropsWeighed = 20;

    /// <summary>Puts what was typed into the row; suppliers apart.</summary>
    internal static void Fill(Material row, MaterialForm form)
    {
        row.Name = form.Name!.Trim();
        row.Kind = form.Kind!.Value;
        row.Cas = CasNumber.TryParse(form.Cas, out var cas, out _) ? cas.Text : null;
        row.StockedIn = form.StockedIn;
        row.Density = form.Density;
        row.DensityAtCelsius = form.DensityAtCelsius;
        row.AlcoholValue = form.AlcoholValue;
        row.AlcoholBasis = form.AlcoholBasis;
        row.FlashPointCelsius = form.FlashPointCelsius;
        row.ShelfLifeDays = (int?)form.ShelfLifeDays;
        row.LifeAfterOpeningDays = (int?)form.LifeAfterOpeningDays;
        row.ReorderPoint = UnitsOf(form.ReorderPoint, form.StockedIn);
        row.SafetyStock = UnitsOf(form.SafetyStock, form.StockedIn);
        row.OrderCoverDays = (int?)form.OrderCoverDays;
        row.DropMilligrams = form.TwentyDropsGrams * Mass.MilligramsPerGram / DropsWeighed;
        row.Notes = string.IsNullOrWhiteSpace(form.Notes) ? null : form.Notes.Trim();
        row.RequiredPapers = [.. form.RequiredPapers.Distinct().Order()];
    }

    private static long? UnitsOf(decimal? amount, StockUnit unit) =>
        amount is not { } known ? null : unit == StockUnit.Gram ? StockAmount.OfGrams(known).Units : (long)known;

    private static decimal? AmountOf(long? units, StockUnit unit) => units is { } known ? new StockAmount(known, unit).Display : null;

    /// <summary>Replaces the list of suppliers by the one typed; unknown names become suppliers.</summary>
    private static async Task SetSuppliersAsync(Command command, Material row, MaterialForm form, CancellationToken cancel)
    {
        row.Suppliers.RemoveAll(s => form.Suppliers.All(line => !Same(line.Name, s.Supplier!.Name)));
        foreach (var line in form.Suppliers)
        {
            var link = row.Suppliers.SingleOrDefault(s => Same(line.Name, s.Supplier!.Name));
            if (link is null)
            {
                var supplier = await SupplierOfAsync(command, line.Name!.Trim(), cancel);
                link = new MaterialSupplier { MaterialId = row.Id, SupplierId = supplier.Id, Supplier = supplier };
                row.Suppliers.Add(link);
            }

            link.SupplierCode = Blank(line.Code);
            link.LeadTimeDays = (int?)line.LeadTimeDays;
            link.PackNote = Blank(line.PackNote);
            link.Minimum = UnitsOf(line.Minimum, form.StockedIn);
            link.Pack = UnitsOf(line.Pack, form.StockedIn);
        }
    }

    /// <summary>Two people who type the same new name at once get one supplier.</summary>
    internal static async Task<Supplier> SupplierOfAsync(Command command, string name, CancellationToken cancel)
    {
        var lower = name.ToLowerInvariant();
        var known = await command.Db.Suppliers.Where(s => s.Name.ToLower() == lower).OrderBy(s => s.Id).FirstOrDefaultAsync(cancel);
        if (known is not null)
        {
            return known;
        }

        await command.Db.Database.ExecuteSqlAsync(
            $"insert into suppliers (id, name) values ({Guid.CreateVersion7()}, {name}) on conflict (name) do nothing", cancel);
        return await command.Db.Suppliers.SingleAsync(s => s.Name == name, cancel);
    }

    private static ChangeMaterial FormOf(Material row) => new()
    {
        MaterialId = row.Id,
        Version = row.Version,
        Name = row.Name,
        Kind = row.Kind,
        Cas = row.Cas,
        StockedIn = row.StockedIn,
        Density = row.Density,
        DensityAtCelsius = row.DensityAtCelsius,
        AlcoholValue = row.AlcoholValue,
        AlcoholBasis = row.AlcoholBasis,
        FlashPointCelsius = row.FlashPointCelsius,
        ShelfLifeDays = row.ShelfLifeDays,
        LifeAfterOpeningDays = row.LifeAfterOpeningDays,
        ReorderPoint = AmountOf(row.ReorderPoint, row.StockedIn),
        SafetyStock = AmountOf(row.SafetyStock, row.StockedIn),
        OrderCoverDays = row.OrderCoverDays,
        TwentyDropsGrams = row.DropMilligrams * DropsWeighed / Mass.MilligramsPerGram,
        Notes = row.Notes,
        RequiredPapers = [.. row.RequiredPapers],
        Suppliers =
        [
            .. row.Suppliers.OrderBy(s => s.Supplier!.Name, StringComparer.OrdinalIgnoreCase).Select(s => new SupplierLine
            {
                Name = s.Supplier!.Name, Code = s.SupplierCode, LeadTimeDays = s.LeadTimeDays, PackNote = s.PackNote,
                Minimum = AmountOf(s.Minimum, row.StockedIn), Pack = AmountOf(s.Pack, row.StockedIn),
            }),
        ],
    };

    private static bool Same(string? left, string right) => string.Equals(left?.Trim(), right, StringComparison.OrdinalIgnoreCase);

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>One name, one material on the shelf: adds, renames and restores take turns at this.</summary>
    internal static async Task<NameTaken?> NameTakenAsync(Command command, string name, Guid? except, CancellationToken cancel)
    {
        await LockNamesAsync(command, cancel);
        var lower = name.Trim().ToLowerInvariant();
        var taken = await command.Db.Materials.AnyAsync(m => m.Name.ToLower() == lower && m.ArchivedAt == null && m.Id != except, cancel);
        return taken ? new NameTaken(name.Trim()) : null;
    }

    /// <summary>Nobody else adds, renames or restores a material until the command ends.</summary>
    internal static Task LockNamesAsync(Command command, CancellationToken cancel) =>
        command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('material names'))", cancel);
}

/// <summary>Two materials of one name could not be told apart when weighing.</summary>
public sealed record NameTaken(string Name) : Refusal
{
    public override string Happened => $"There is a material named “{Name}” already.";
    public override string ToDo => "Add what tells them apart to the name: the supplier, the strength, the size.";
}
