using System.Globalization;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Library;

public partial class ScalePage
{
    private const int FirstBottles = 48;
    private readonly ScaleWish _wish = new() { Bottles = FirstBottles, Grams = 1000m };
    private ScaleSheet? _sheet;
    private Refusal? _why;
    private int _asked;
    private decimal? Bottles => _wish.Bottles;

    [Inject] private Formulas Formulas { get; set; } = default!;
    [Inject] private Versions Versions { get; set; } = default!;

    [Parameter] public Guid Id { get; set; }

    /// <summary>Number of the version; the newest when it is not said.</summary>
    [SupplyParameterFromQuery] public int? V { get; set; }
    [PersistentState] public FormulaSheet? Data { get; set; }
    [PersistentState] public IReadOnlyList<UsableLot>? Lots { get; set; }

    private VersionRow? Version => V is null ? Data?.Released ?? Data?.Draft : Data?.Versions.FirstOrDefault(v => v.Number == V);

    private List<SizeRow> Sizes => [.. Data!.Sizes.Where(s => s.RetiredAt is null)];

    private Choice<ScaleBy>[] Ways =>
        [new(ScaleBy.Bottles, $"{ProductKinds.Get(Data!.Formula.ProductKind).ContainerWord}s to fill"), new(ScaleBy.Mass, "a mass"), new(ScaleBy.Lot, "all of a lot")];

    private string Sentence => _sheet switch
    {
        null => "Say how much to make.",
        { HasShortage: true } => "Not everything is on the shelf for this.",
        { Bottles: { } n, Fill: not null } sheet => $"{n.ToString("N0", CultureInfo.CurrentCulture)} need {Said.Grams(sheet.Total, Mass.FromGrams(1000))} g, and it is all on the shelf.",
        var sheet => $"{Said.Grams(sheet.Total, Mass.FromGrams(1000))} g, and it is all on the shelf.",
    };

    protected override async Task OnInitializedAsync()
    {
        Data ??= await Formulas.ReadAsync(Id);
        if (Version is null)
        {
            return;
        }

        _wish.VersionId = Version.Id;
        _wish.SizeId = Sizes.FirstOrDefault()?.Id;
        _wish.By = _wish.SizeId is null ? ScaleBy.Mass : ScaleBy.Bottles;
        Lots ??= await Versions.LotsForAsync(Version.Id);
        await ScaleAsync();
    }

    protected override bool Concerns(News news) => news.Topic is Topics.Formulas or Topics.Lots or Topics.Materials or Topics.Batches;

    protected override async Task ReadAsync()
    {
        if (await Formulas.ReadAsync(Id) is not { } fresh || Version is null)
        {
            return;
        }

        Data = fresh;
        Lots = await Versions.LotsForAsync(_wish.VersionId);
        await ScaleAsync();
    }

    private Task AskAsync(Action change)
    {
        change();
        if (_wish.By == ScaleBy.Bottles)
        {
            _wish.SizeId ??= Sizes.FirstOrDefault()?.Id;
        }

        return ScaleAsync();
    }

    private async Task ScaleAsync()
    {
        var waiting = _wish.By switch { ScaleBy.Bottles => _wish.Bottles is null || _wish.SizeId is null, ScaleBy.Mass => _wish.Grams is null, _ => _wish.LotId is null };
        var turn = ++_asked;
        var outcome = waiting ? null : await Versions.ScaleAsync(_wish);
        if (turn != _asked)
        {
            return; // more was typed meanwhile
        }

        _why = outcome?.Refusal;
        _sheet = (outcome as Done<ScaleSheet>)?.Value;
    }

    private static int? Whole(decimal? number) => number is { } n ? (int)decimal.Clamp(n, 0, int.MaxValue) : null;

    private static string Count(long pieces) => QuantityFormat.Number(pieces, CultureInfo.CurrentCulture, 0);
}
