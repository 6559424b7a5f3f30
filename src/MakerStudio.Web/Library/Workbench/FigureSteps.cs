using MakerStudio.Core.Workings;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library.Workbench;

/// <summary>The workings of what follows from shelf, sizes and costs rather than from physics.</summary>
internal sealed class FigureSteps(FormulaSheet sheet, VersionRow version, Worked worked)
{
    private static readonly Source Shelf = new("the shelf as it stands: on hand, less what planned batches need", DataStatus.Derived);
    private static readonly Source Paid = new("landed cost of the newest lot of each material", DataStatus.Derived);
    private static readonly Source Shares = new("the lines' shares by weight", DataStatus.Derived);
    private static readonly Source Size = new("the size as it is written down, filled by weight at 20 °C", DataStatus.Derived);

    private IEnumerable<(LineRow Line, LineMaterial Material, decimal Fraction)> Lines =>
        version.Lines.Zip(worked.Shares, (line, share) => (line, sheet.Materials[line.MaterialId], share.Fraction)).Where(l => l.Fraction > 0);

    public IReadOnlyList<WorkingStep> Load => worked.Load is null ? [] :
    [
        .. Lines.Where(l => l.Material.ScentShare > 0).Select(l => l.Material.ScentShare < 1
            ? Step("Scent", $"{l.Material.Name}: {100 * l.Fraction:0.00} % by weight, of it {100 * l.Material.ScentShare:0.##} % scent.", Shares, l.Line)
            : Step("Scent", $"{l.Material.Name}: {100 * l.Fraction:0.00} % by weight.", Shares, l.Line)),
        Step("Scent", $"Together {100 * worked.Load.OfTotal:0.00} % of the total by weight.", Shares),
        .. worked.Load.Of != "w/w" && worked.Load.Fraction is { } of ? [Step("Scent", $"That is {100 * of:0.00} % {worked.Load.Of}.", Shares)] : Array.Empty<WorkingStep>(),
    ];

    public IReadOnlyList<WorkingStep> Cost => worked.Shares.Count == 0 ? [] :
    [
        .. Lines.Select(l => l.Material.UnitCost is { } cost
            ? Step("Cost", $"{l.Material.Name}: {1000 * l.Fraction:0.0} g of 1 kg at {1000 * cost:0.00##} for 1 kg: {1000 * l.Fraction * cost:0.0000}.", Paid, l.Line)
            : Step("Cost", $"{l.Material.Name}: no lot of it ever came, so its cost is not known.", Paid, l.Line)),
        .. worked.CostPerGram is { } all ? [Step("Cost", $"Together {1000 * all:0.0000} for 1 kg.", Paid)] : Array.Empty<WorkingStep>(),
    ];

    public IReadOnlyList<WorkingStep> Largest =>
    [
        .. Lines.GroupBy(l => l.Material.Id).Select(same =>
        {
            var (material, share) = (same.First().Material, same.Sum(l => l.Fraction));
            return Step("Largest batch", $"{material.Name}: {Math.Max(0, material.Available) / 1000m:0.0} g to hand ÷ {100 * share:0.00} %: enough for {Math.Max(0, material.Available) / 1000m / share:0.0} g.", Shelf);
        }),
    ];

    public IReadOnlyList<WorkingStep> Fill(SizeRow size) => worked.Fill(size) is not { } fill ? [] :
    [
        size.NominalMillilitres is { } ml
            ? Step("Fill", $"{ml:0.##} mL × {worked.Density!.Value.GramsPerMillilitre:0.000###} g/mL and {size.OverfillMilligrams / 1000m:0.###} g over: {fill.Grams:0.0##} g.", Size)
            : Step("Fill", $"{size.NominalMilligrams / 1000m:0.###} g and {size.OverfillMilligrams / 1000m:0.###} g over: {fill.Grams:0.0##} g.", Size),
    ];

    public IReadOnlyList<WorkingStep> CostOf(SizeRow size) => worked.Fill(size) is not { } fill || worked.CostPerGram is not { } per ? Cost :
    [
        .. Fill(size), .. Cost,
        Step("Cost", $"{fill.Grams:0.0##} g × {1000 * per:0.0000} for 1 kg: {fill.Grams * per:0.0000}, without packaging and labour.", Paid),
    ];

    private static WorkingStep Step(string rule, FormattableString says, Source source, LineRow? line = null) => new(rule, says, source, line?.LineId);
}
