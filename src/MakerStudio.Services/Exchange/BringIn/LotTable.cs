using System.Globalization;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Exchange;

/// <summary>A file of lots that stand on the shelf: each comes in as opening stock, at what it cost landed.</summary>
internal static class LotTable
{
    public const string Lot = "Lot";
    public const string Material = "Material";
    public const string Amount = "Amount";
    public const string UnitColumn = "Unit";
    public const string State = "State";
    public const string Why = "Why";
    public const string Received = "Received";
    public const string Opened = "Opened";
    public const string Expires = "Expires";
    public const string Retest = "Retest";
    public const string Supplier = "Supplier";
    public const string SupplierLot = "Supplier lot";
    public const string DensityColumn = "Density (g/mL)";
    public const string Tare = "Tare (g)";
    public const string ShelfColumn = "Shelf";

    /// <summary>What the table of lots says of one that holds nothing.</summary>
    public const string UsedUp = "Used up";

    public static string Landed(string currency) => $"Landed ({currency} per kg or each)";

    /// <param name="currency">ISO 4217, the studio's.</param>
    public static IReadOnlyList<FileColumn> Columns(string currency) =>
    [
        new(Material, CellKind.Text, "Its name in the storeroom. Bring the materials in first.", true),
        new(Amount, CellKind.Number, "What is in the jar, net; the unit may stand behind the number.", true, "On hand (g or each)"),
        new(UnitColumn, CellKind.Text, "g, kg, mL, L, lb, oz (weight), fl oz (US), fl oz (imp) or each.", Also: "Stocked in"),
        new(Landed(currency), CellKind.Number, "What it cost with freight and duty; 0 for what cost nothing.", true),
        new(Received, CellKind.Date, "The day it came: 2026-11-14.", true),
        new(Lot, CellKind.Text, "The code on the jar; empty gives it the next one."),
        new(State, CellKind.Text, "Quarantine, Released, On hold or Rejected. Empty goes by the papers, as a delivery does."),
        new(Why, CellKind.Text, "The ground of the state. Needed where papers are missing and the lot is released all the same, and for a hold or a rejection."),
        new(Opened, CellKind.Date, "The day it was opened."),
        new(Expires, CellKind.Date, "The supplier’s date."),
        new(Retest, CellKind.Date, "The day to look at it again; empty takes the material’s shelf life where there is no expiry."),
        new(Supplier, CellKind.Text, "Who it came from; a new name is added."),
        new(SupplierLot, CellKind.Text, "The supplier’s own code for it."),
        new(DensityColumn, CellKind.Number, "Of this lot; empty takes the material’s."),
        new(Tare, CellKind.Number, "What the empty container weighs."),
        new(ShelfColumn, CellKind.Text, "Where it stands."),
    ];

    public static async Task<CheckedFile> CheckAsync(TypedFile file, CheckContext context)
    {
        var shelf = await LotsHere.OfAsync(file, context);
        var rows = new List<CheckedRow>();
        var add = new List<OpeningLot>();
        foreach (var cells in file.Rows)
        {
            var reader = new OpeningLotReader(cells, context, shelf);
            var lot = reader.Read();
            rows.Add(new CheckedRow(cells, lot?.Says ?? reader.Names, reader.Skip, lot?.Note));
            if (lot is not null && reader.Skip is null)
            {
                add.Add(lot);
            }
        }

        var value = add.Sum(l => l.Amount.Display * l.UnitCost);
        return new CheckedFile(
            rows, $"{(add.Count == 1 ? "1 lot" : $"{add.Count.ToString("N0", CultureInfo.CurrentCulture)} lots")} worth {AmountWords.Money(value)} {context.Currency}", (command, cancel) => PutAsync(command, add, cancel));
    }

    private static async Task PutAsync(Command command, List<OpeningLot> add, CancellationToken cancel)
    {
        var suppliers = new Dictionary<string, Guid>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in add.Select(l => l.Supplier).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase))
        {
            suppliers[name] = (await Materials.SupplierOfAsync(command, name, cancel)).Id;
        }

        foreach (var opening in add)
        {
            var lot = new Lot
            {
                Code = opening.Code ?? await command.NextCodeAsync(Core.Materials.MaterialKinds.LotPrefix(opening.Material.Kind)), MaterialId = opening.Material.Id,
                SupplierId = opening.Supplier is { } name ? suppliers[name] : null, SupplierLot = opening.SupplierLot, ReceivedOn = opening.ReceivedOn, OpenedOn = opening.OpenedOn,
                ExpiresOn = opening.ExpiresOn, RetestOn = opening.RetestOn, Status = opening.Status, StatusReason = opening.Reason,
                Density = opening.Density ?? opening.Material.Density, UnitCost = opening.UnitCost, TareMilligrams = opening.TareMilligrams, Shelf = opening.Shelf, Balance = new LotBalance(),
            };
            command.Db.Lots.Add(lot);
            Ledger.Post(command, lot, MovementKind.Opening, opening.Amount.Units, m => m.Note = $"Opening stock at {AmountWords.UnitCost(lot.UnitCost, opening.Material.StockedIn)} landed, from a file");
            LotLog.Add(command, lot, LotEventKind.StatusChanged, LotWords.Status(lot.Status), lot.StatusReason);
            command.Record("lot", lot.Id, $"{lot.Code}: opening stock {AmountWords.Amount(opening.Amount.Units, opening.Material.StockedIn)} of {opening.Material.Name}, from a file", Topics.Lots);
        }
    }
}

/// <summary>A lot as it would be put on the shelf.</summary>
/// <param name="Code">Null takes the next of its kind.</param>
/// <param name="Amount">Above 0.</param>
/// <param name="UnitCost">Of one gram or one piece.</param>
/// <param name="Density">Of this lot, g/mL; null takes the material's.</param>
internal sealed record OpeningLot(
    MaterialFacts Material, string? Code, StockAmount Amount, decimal UnitCost, LotStatus Status, string Reason, DateOnly ReceivedOn, DateOnly? OpenedOn, DateOnly? ExpiresOn, DateOnly? RetestOn,
    string? Supplier, string? SupplierLot, decimal? Density, long? TareMilligrams, string? Shelf)
{
    public string Says => $"{Code ?? "A new code"}: {AmountWords.Amount(Amount.Units, Amount.Unit)} of {Material.Name} at {AmountWords.UnitCost(UnitCost, Amount.Unit)}, {LotWords.Status(Status).ToLowerInvariant()}";

    public string? Note => Material.Missing.Count == 0 || Status is not (LotStatus.Released or LotStatus.Quarantine) ? null
        : Status == LotStatus.Released ? $"Released as the file says; {LotPapers.Words(Material.Missing)} missing here." : $"{LotPapers.Words(Material.Missing)} missing.";
}
