using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>What a file of formulas is held against: materials by name, and the formulas in use with their newest lines.</summary>
internal sealed class FormulasHere
{
    private readonly Dictionary<string, (Guid Id, StockUnit StockedIn)> _materials;
    private readonly Dictionary<(string Name, string Kind), List<BroughtLine>> _formulas;
    private readonly HashSet<string> _blendsInFile;

    private FormulasHere(Dictionary<string, (Guid, StockUnit)> materials, Dictionary<(string, string), List<BroughtLine>> formulas, HashSet<string> blendsInFile) =>
        (_materials, _formulas, _blendsInFile) = (materials, formulas, blendsInFile);

    public static async Task<FormulasHere> OfAsync(TypedFile file, CheckContext context)
    {
        var names = file.Rows.Select(r => Key(r.Text(FormulaTable.MaterialColumn))).Distinct().ToArray();
        var materials = await context.Db.Materials.Where(m => m.ArchivedAt == null && names.Contains(m.Name.ToLower()))
            .Select(m => new { m.Id, m.Name, m.StockedIn }).ToListAsync(context.Cancel);
        var wanted = file.Rows.Select(r => Key(r.Text(FormulaTable.FormulaColumn))).Distinct().ToArray();
        var formulas = await context.Db.Formulas.Where(f => f.ArchivedAt == null && wanted.Contains(f.Name.ToLower())).Select(f => new
        {
            f.Name, f.ProductKind,
            Lines = f.Versions.OrderByDescending(v => v.Number).Take(1).SelectMany(v => v.Lines).OrderBy(l => l.Position).Select(l => new { l.Material!.Name, l.Amount, l.Basis, l.Method }).ToList(),
        }).ToListAsync(context.Cancel);
        var preBlend = ProductKinds.All.Where(k => !k.IsSold).Select(k => k.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return new FormulasHere(
            materials.GroupBy(m => Key(m.Name)).ToDictionary(g => g.Key, g => (g.First().Id, g.First().StockedIn)),
            formulas.GroupBy(f => (Key(f.Name), f.ProductKind)).ToDictionary(g => g.Key, g => g.First().Lines.ConvertAll(l => new BroughtLine(l.Name, l.Amount, l.Basis, l.Method))),
            [.. file.Rows.Where(r => preBlend.Contains(r.Text(FormulaTable.MadeAs) ?? "")).Select(r => Key(r.Text(FormulaTable.FormulaColumn)))]);
    }

    public static string Key(string? name) => name?.Trim().ToLowerInvariant() ?? "";

    /// <summary>The material of this name that is stocked in grams.</summary>
    public Guid? Weighed(string name) => _materials.TryGetValue(Key(name), out var found) && found.StockedIn == StockUnit.Gram ? found.Id : null;

    /// <summary>Why a line cannot hold a material of this name; null when it can.</summary>
    public string? WhyNot(string name) =>
        _materials.TryGetValue(Key(name), out var found) ? found.StockedIn == StockUnit.Gram ? null : $"{name} is counted in pieces here, so no formula can hold it."
        : _blendsInFile.Contains(Key(name)) ? null : $"There is no material “{name}” in the storeroom. Bring the materials in first.";

    /// <summary>The newest lines of the formula of this name and kind; null when there is none.</summary>
    public IReadOnlyList<BroughtLine>? Lines(string name, ProductKind kind) => _formulas.GetValueOrDefault((Key(name), kind.Key));

    /// <summary>Whether two lists of lines say the same, capitals of a name apart.</summary>
    public static bool AreSame(IReadOnlyList<BroughtLine> left, IReadOnlyList<BroughtLine> right) =>
        left.Count == right.Count && left.Zip(right).All(l => Key(l.First.Material) == Key(l.Second.Material) && l.First with { Material = "" } == l.Second with { Material = "" });
}
