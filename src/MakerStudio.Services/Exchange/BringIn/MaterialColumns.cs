using MakerStudio.Core.Exchange;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>The columns of a material, said once for the table that is saved and the file that is brought in.</summary>
public static class MaterialColumns
{
    private const char Between = FileColumn.Between;
    internal const string DensityAt = "Density at (°C)";
    private const string NoPapers = "none";
    private static readonly (string, MaterialKind)[] Kinds = [.. MaterialKinds.All.Select(k => (k.Name, k.Kind))];
    private static readonly (string, StockUnit)[] Units = [("g", StockUnit.Gram), ("each", StockUnit.Each)];
    private static readonly (string, PaperKind)[] Papers = [.. Enum.GetValues<PaperKind>().Select(p => (PaperKinds.Name(p), p))];

    private static readonly (string Name, AlcoholBasis Value)[] Bases =
        [("% vol", AlcoholBasis.PercentVolume), ("% by weight", AlcoholBasis.PercentMass), ("US proof", AlcoholBasis.UsProof)];

    /// <param name="Property">Of the form: a problem of its shape is said at this column.</param>
    internal sealed record Column(FileColumn Told, string Property, Func<MaterialForm, object?> Read, Action<MaterialForm, CsvCells, string> Take);

    internal static IReadOnlyList<Column> All { get; } =
    [
        Text("Material", nameof(MaterialForm.Name), "What it is called here; one name, one material.", m => m.Name, (m, c, at) => m.Name = c.Text(at), true, "Name"),
        Text("Kind", nameof(MaterialForm.Kind), string.Join(", ", MaterialKinds.All.Select(k => k.Name)) + ".", m => m.Kind is { } kind ? MaterialKinds.Name(kind) : null, (m, c, at) => m.Kind = c.OneOf(at, Kinds), true),
        Text("CAS", nameof(MaterialForm.Cas), "The number with its dashes.", m => m.Cas, (m, c, at) => m.Cas = c.Text(at)),
        Text("Stocked in", nameof(MaterialForm.StockedIn), "g or each; empty takes what is usual for the kind.", m => m.StockedIn == StockUnit.Gram ? "g" : "each", (m, c, at) => m.StockedIn = c.OneOf(at, Units) ?? m.StockedIn),
        Number("Density (g/mL)", nameof(MaterialForm.Density), "Sheets in kg/m³: divide by 1,000.", m => m.Density, (m, c, at) => m.Density = c.Number(at)),
        Number(DensityAt, nameof(MaterialForm.DensityAtCelsius), "Empty is 20.", m => m.DensityAtCelsius, (m, c, at) => m.DensityAtCelsius = c.Number(at, mayBeBelowZero: true)),
        Number("Alcohol", nameof(MaterialForm.AlcoholValue), "Only with its basis in the next column.", m => m.AlcoholValue, (m, c, at) => m.AlcoholValue = c.Number(at)),
        Text("Alcohol is", nameof(MaterialForm.AlcoholBasis), "% vol, % by weight or US proof.", m => m.AlcoholBasis is { } basis ? Bases.First(b => b.Value == basis).Name : null, (m, c, at) => m.AlcoholBasis = c.OneOf(at, Bases)),
        Number("Flash point (°C)", nameof(MaterialForm.FlashPointCelsius), "Closed cup, as the sheet has it.", m => m.FlashPointCelsius, (m, c, at) => m.FlashPointCelsius = c.Number(at, mayBeBelowZero: true)),
        Number("Shelf life (days)", nameof(MaterialForm.ShelfLifeDays), "Unopened.", m => m.ShelfLifeDays, (m, c, at) => m.ShelfLifeDays = c.Number(at)),
        Number("Life after opening (days)", nameof(MaterialForm.LifeAfterOpeningDays), "Counts from the day a lot is opened.", m => m.LifeAfterOpeningDays, (m, c, at) => m.LifeAfterOpeningDays = c.Number(at)),
        Number("Reorder point (g or each)", nameof(MaterialForm.ReorderPoint), "In what it is stocked in.", m => m.ReorderPoint, (m, c, at) => m.ReorderPoint = c.Number(at)),
        Number("Safety stock (g or each)", nameof(MaterialForm.SafetyStock), "For a late delivery or a busy week.", m => m.SafetyStock, (m, c, at) => m.SafetyStock = c.Number(at)),
        Number("An order lasts (days)", nameof(MaterialForm.OrderCoverDays), "Beyond its lead time; empty is 60.", m => m.OrderCoverDays, (m, c, at) => m.OrderCoverDays = c.Number(at)),
        Number("20 drops (g)", nameof(MaterialForm.TwentyDropsGrams), "What twenty drops of it weigh.", m => m.TwentyDropsGrams, (m, c, at) => m.TwentyDropsGrams = c.Number(at)),
        Text("Required papers", nameof(MaterialForm.RequiredPapers), "SDS, fragrance certificate, CoA, other paper, parted by |. “none” for none; empty takes what is usual for the kind.",
            m => m.RequiredPapers.Count == 0 ? NoPapers : string.Join($" {Between} ", m.RequiredPapers.Order().Select(PaperKinds.Name)), TakePapers),
        Text("Suppliers", nameof(MaterialForm.Suppliers), "Names, parted by |. New ones are added.", m => m.Suppliers.Count == 0 ? null : string.Join($" {Between} ", m.Suppliers.Select(s => s.Name)), TakeSuppliers, also: "Supplier"),
        Text("Supplier codes", nameof(MaterialForm.Suppliers), "Theirs for it, in the order of the suppliers.", m => Joined(m, s => s.Code), (m, c, at) => Each(m, c, at, (s, text) => s.Code = text), also: "Supplier code"),
        Numbers("Lead times (days)", "From ordering to having it here, in the order of the suppliers.", s => s.LeadTimeDays, (s, days) => s.LeadTimeDays = days, "Lead time (days)"),
        Text("Packs", nameof(MaterialForm.Suppliers), "How it comes: 5 kg drum; in the order of the suppliers.", m => Joined(m, s => s.PackNote), (m, c, at) => Each(m, c, at, (s, text) => s.PackNote = text), also: "Pack"),
        Numbers("Least they sell (g or each)", "In what it is stocked in, in the order of the suppliers.", s => s.Minimum, (s, least) => s.Minimum = least),
        Numbers("In whole packs of (g or each)", "In what it is stocked in, in the order of the suppliers.", s => s.Pack, (s, pack) => s.Pack = pack),
        Text("Notes", nameof(MaterialForm.Notes), "Anything else.", m => m.Notes, (m, c, at) => m.Notes = c.Text(at)),
    ];

    /// <summary>Puts the columns into a table that is saved.</summary>
    public static SheetOf<T> OfMaterial<T>(this SheetOf<T> sheet, Func<T, MaterialForm> form)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(form);
        foreach (var column in All)
        {
            _ = column.Told.Kind == CellKind.Number
                ? sheet.Number(column.Told.Heading, row => (decimal?)column.Read(form(row)))
                : sheet.Text(column.Told.Heading, row => (string?)column.Read(form(row)));
        }

        return sheet;
    }

    private static Column Text(string heading, string property, string hint, Func<MaterialForm, string?> read, Action<MaterialForm, CsvCells, string> take, bool needed = false, string? also = null) =>
        new(new FileColumn(heading, CellKind.Text, hint, needed, also), property, read, take);

    private static Column Number(string heading, string property, string hint, Func<MaterialForm, decimal?> read, Action<MaterialForm, CsvCells, string> take) =>
        new(new FileColumn(heading, CellKind.Number, hint), property, m => read(m), take);

    /// <summary>A number for each supplier.</summary>
    private static Column Numbers(string heading, string hint, Func<SupplierLine, decimal?> read, Action<SupplierLine, decimal?> take, string? also = null) => new(
        new FileColumn(heading, CellKind.Text, hint, Also: also, IsNumbers: true), nameof(MaterialForm.Suppliers),
        m => Joined(m, s => read(s) is { } number ? CsvCell.Number(number) : null), (m, c, at) => Each(m, c, at, (s, text) => take(s, c.Number(at, text))));

    private static void TakePapers(MaterialForm form, CsvCells cells, string at) =>
        form.RequiredPapers = string.Equals(cells.Text(at), NoPapers, StringComparison.OrdinalIgnoreCase) ? [] : [.. Parts(cells.Text(at), Between, ';').Select(p => cells.OneOf(at, p, Papers)).OfType<PaperKind>()];

    private static void TakeSuppliers(MaterialForm form, CsvCells cells, string at) => form.Suppliers = [.. Parts(cells.Text(at), Between).Select(name => new SupplierLine { Name = name })];

    private static void Each(MaterialForm form, CsvCells cells, string at, Action<SupplierLine, string?> take)
    {
        var parts = cells.Text(at)?.Split(Between, StringSplitOptions.TrimEntries) ?? [];
        if (parts.Length > form.Suppliers.Count)
        {
            cells.Refuse(at, "There is more here than suppliers in their column.");
            return;
        }

        for (var i = 0; i < form.Suppliers.Count; i++)
        {
            take(form.Suppliers[i], i < parts.Length && parts[i].Length > 0 ? parts[i] : null);
        }
    }

    private static string? Joined(MaterialForm form, Func<SupplierLine, string?> part) =>
        form.Suppliers.Exists(s => !string.IsNullOrWhiteSpace(part(s))) ? string.Join($" {Between} ", form.Suppliers.Select(part)).Trim() : null;

    private static string[] Parts(string? text, params char[] marks) => text?.Split(marks, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];
}
