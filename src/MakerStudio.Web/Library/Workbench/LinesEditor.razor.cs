using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Library.Workbench;

public partial class LinesEditor
{
    private static readonly string[] Measures = ["g", "mL", UnitWords.Drops];
    private readonly Dictionary<Guid, Mass> _masses = [];
    private BasisSwitch.NotExact? _not;
    private LineBasis _wished;

    [Parameter, EditorRequired] public FormulaSheet Sheet { get; set; } = default!;
    [Parameter, EditorRequired] public DraftForm Form { get; set; } = default!;

    /// <summary>Null while a field cannot be read.</summary>
    [Parameter] public Worked? Worked { get; set; }

    /// <summary>The version this one was changed from, or null for the first.</summary>
    [Parameter] public VersionRow? Before { get; set; }
    [Parameter] public decimal? BatchGrams { get; set; }
    [Parameter] public EventCallback Changed { get; set; }
    [Parameter] public EventCallback<DraftLine> TakeOut { get; set; }

    private Mass? Batch => BatchGrams is > 0 and <= Scaling.LargestBatchKilograms * 1000m ? Mass.RoundGrams(BatchGrams.Value) : null;

    private Worked? BeforeWorked { get; set; }

    private bool KnowsRest => Form.Basis is LineBasis.PercentByWeight or LineBasis.PercentByVolume;

    private Choice<LineBasis>[] Ways => [
        new(LineBasis.PercentByWeight, "% by weight"), new(LineBasis.PartsByWeight, "parts by weight"), new(LineBasis.PartsByVolume, "parts by volume"),
        .. HasWax ? [new Choice<LineBasis>(LineBasis.PercentOfWax, "% of wax")] : Array.Empty<Choice<LineBasis>>(),
        new(LineBasis.PercentByVolume, "% by volume"), new(LineBasis.Grams, "g, mL, drops"),
    ];

    private bool HasWax => Form.Basis == LineBasis.PercentOfWax || Form.Lines.Any(l => Sheet.Materials[l.MaterialId].Kind == Core.Materials.MaterialKind.Wax);

    protected override void OnParametersSet()
    {
        BeforeWorked = Before is null ? null : Worked.Of(Sheet, Before);
        _masses.Clear();
        if (Worked is { AddsUp: true } worked && Batch is { } batch)
        {
            foreach (var (share, mass) in worked.Shares.Zip(Scaling.Split(batch, [.. worked.Shares.Select(s => s.Fraction)])))
            {
                _masses[share.LineId] = mass;
            }
        }
    }

    private decimal? Was(Guid materialId) => BeforeWorked is { AddsUp: true } worked && Before!.Lines.Any(l => l.MaterialId == materialId)
        ? Before.Lines.Zip(worked.Shares).Where(l => l.First.MaterialId == materialId).Sum(l => l.Second.PercentShown)
        : null;

    private Task MoveAsync(DraftLine line, int by)
    {
        Form.Move(line, by);
        return Changed.InvokeAsync();
    }

    private Task MeasureAsync(DraftLine line, string unit)
    {
        line.Basis = unit switch { "mL" => LineBasis.Millilitres, UnitWords.Drops => LineBasis.Drops, _ => LineBasis.Grams };
        return Changed.InvokeAsync();
    }

    private Task Switch(LineBasis basis)
    {
        _not = null;
        _wished = basis;
        switch (BasisSwitch.To(basis, Form.Rows, Sheet.Materials))
        {
            case BasisSwitch.Same same:
                return TakeAsync(same.Lines);
            case BasisSwitch.NotExact not:
                _not = not;
                break;
        }

        return Task.CompletedTask;
    }

    private Task TakeAsync(IReadOnlyList<LineRow> lines)
    {
        _not = null;
        Form.Put(lines);
        Form.Use(_wished);
        return Changed.InvokeAsync();
    }

    private static string Numbers(IReadOnlyList<LineRow> lines) =>
        string.Join(" : ", lines.Select(l => l.Amount is null ? "the rest" : QuantityReadout.Plain(l.Amount)));
}
