using System.Text.RegularExpressions;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>What a file of lots is held against: materials by name, codes that are taken, supplier's lots on the shelf.</summary>
internal sealed partial class LotsHere
{
    private readonly Dictionary<string, MaterialFacts> _materials;
    private readonly Dictionary<string, Guid?> _codes;
    private readonly Dictionary<(Guid Material, string SupplierLot), string> _supplierLots;

    private LotsHere(Dictionary<string, MaterialFacts> materials, Dictionary<string, Guid?> codes, Dictionary<(Guid, string), string> supplierLots) =>
        (_materials, _codes, _supplierLots) = (materials, codes, supplierLots);

    /// <summary>Lines of the file by code, and by all that tells two rows without a code apart.</summary>
    public Dictionary<string, long> Seen { get; } = new(StringComparer.Ordinal);

    public static async Task<LotsHere> OfAsync(TypedFile file, CheckContext context)
    {
        var codes = file.Rows.Select(CodeOf).OfType<string>().Distinct().ToArray();
        if (context.Command is { } command)
        {
            await CountOnAsync(command, codes, context.Cancel);
        }

        var names = file.Rows.Select(r => Key(r.Text(LotTable.Material))).Distinct().ToArray();
        var ids = await context.Db.Materials.Where(m => m.ArchivedAt == null && names.Contains(m.Name.ToLower())).Select(m => m.Id).ToListAsync(context.Cancel);
        var materials = await MaterialFacts.LoadAsync(context.Db, ids, context.Cancel);
        var lots = await context.Db.Lots.Where(l => codes.Contains(l.Code)).Select(l => new { l.Code, Material = (Guid?)l.MaterialId }).ToListAsync(context.Cancel);
        var batches = await context.Db.Batches.Where(b => codes.Contains(b.Code)).Select(b => b.Code).ToListAsync(context.Cancel);
        var theirs = file.Rows.Select(r => r.Text(LotTable.SupplierLot)).OfType<string>().Distinct().ToArray();
        var supplierLots = await context.Db.Lots.Where(l => ids.Contains(l.MaterialId) && theirs.Contains(l.SupplierLot!)).Select(l => new { l.MaterialId, l.SupplierLot, l.Code }).ToListAsync(context.Cancel);
        var taken = lots.ToDictionary(l => l.Code, l => l.Material);
        foreach (var batch in batches)
        {
            taken.TryAdd(batch, null);
        }

        return new LotsHere(
            materials.Values.GroupBy(m => Key(m.Name)).ToDictionary(g => g.Key, g => g.First()), taken,
            supplierLots.GroupBy(l => (l.MaterialId, l.SupplierLot!)).ToDictionary(g => g.Key, g => g.First().Code));
    }

    /// <summary>Codes are written in capitals everywhere.</summary>
    public static string? CodeOf(CsvCells cells) => cells.Text(LotTable.Lot)?.ToUpperInvariant();

    public MaterialFacts? Material(string? name) => _materials.GetValueOrDefault(Key(name));

    /// <summary>Whether a lot or a batch has this code, and of which material the lot is; null for a batch.</summary>
    public bool IsTaken(string code, out Guid? material) => _codes.TryGetValue(code, out material);

    /// <summary>The code under which a supplier's lot stands here.</summary>
    public string? CodeOf(Guid material, string supplierLot) => _supplierLots.GetValueOrDefault((material, supplierLot));

    /// <summary>
    /// Counts go on after the highest number that comes in, so that no new lot is given a code that stands on a jar. The
    /// counters stay locked until the command ends: nobody is given one of these codes meanwhile.
    /// </summary>
    private static async Task CountOnAsync(Command command, string[] codes, CancellationToken cancel)
    {
        foreach (var series in codes.Select(c => Numbered().Match(c)).Where(m => m.Success).GroupBy(m => m.Groups["prefix"].Value).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var highest = series.Max(m => int.Parse(m.Groups["number"].Value, System.Globalization.CultureInfo.InvariantCulture));
            await command.Db.Database.ExecuteSqlAsync(
                $"insert into code_counters (prefix, last) values ({series.Key}, {highest}) on conflict (prefix) do update set last = greatest(code_counters.last, {highest})", cancel);
        }
    }

    private static string Key(string? name) => name?.Trim().ToLowerInvariant() ?? "";

    [GeneratedRegex("^(?<prefix>[A-Z]{1,3})-(?<number>[1-9][0-9]{0,6})$", RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();
}
