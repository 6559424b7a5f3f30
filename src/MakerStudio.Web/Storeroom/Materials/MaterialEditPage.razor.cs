using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Storeroom;

/// <summary>One form for a new material and for changing one.</summary>
public partial class MaterialEditPage
{
    private static readonly MaterialFormValidator Rules = new();

    private MaterialForm? _form;
    private ChangeMaterial? _opened;
    private IReadOnlyList<MaterialDifference> _differences = [];
    private Refusal? _why;
    private bool _busy;
    private bool _unfit;

    [Inject] private Materials Materials { get; set; } = default!;
    [Inject] private Suppliers Suppliers { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;

    [Parameter] public Guid? Id { get; set; }

    /// <summary>As first read, kept over the hand-over from the prerendered page.</summary>
    [PersistentState] public ChangeMaterial? Data { get; set; }
    [PersistentState] public List<string>? Known { get; set; }
    [PersistentState] public bool Fixed { get; set; }

    /// <summary>Once a lot exists the other unit is shown closed.</summary>
    private Choice<StockUnit>[] Units =>
    [
        new(StockUnit.Gram, "grams", Fixed && _form!.StockedIn != StockUnit.Gram),
        new(StockUnit.Each, "pieces", Fixed && _form!.StockedIn != StockUnit.Each),
    ];

    protected override async Task OnInitializedAsync()
    {
        Known ??= [.. (await Suppliers.ListAsync()).Select(s => s.Name)];
        if (Id is not { } id)
        {
            _form = new AddMaterial();
            return;
        }

        if (Data is null)
        {
            Data = await Materials.FormAsync(id);
            Fixed = await Materials.IsStockUnitFixedAsync(id);
        }

        if (Data is null)
        {
            Navigation.NotFound();
            return;
        }

        _opened = Data;
        _form = Data.Copy<ChangeMaterial>();
        _form.RequestId = Guid.CreateVersion7();
    }

    /// <summary>A new material takes the unit and the papers usual for its kind; a known one keeps its own.</summary>
    private void KindChosen()
    {
        if (_form is not AddMaterial { Kind: { } kind } form)
        {
            return;
        }

        form.StockedIn = MaterialKinds.DefaultStockUnit(kind);
        form.RequiredPapers = [.. MaterialKinds.DefaultPapers(kind)];
    }

    private async Task SaveAsync()
    {
        if (_busy)
        {
            return;
        }

        _busy = true;
        _unfit = false;
        try
        {
            var actor = await Person.ActorAsync();
            var judged = Judged();
            if (judged is ChangeMaterial change)
            {
                Show(await Materials.ChangeAsync(actor, change), change.MaterialId);
            }
            else
            {
                var outcome = await Materials.AddAsync(actor, (AddMaterial)judged);
                Show(outcome, (outcome as Done<MaterialAdded>)?.Value.Id ?? Guid.Empty);
            }
        }
        finally
        {
            _busy = false;
        }
    }

    private void Show<T>(Outcome<T> outcome, Guid id)
    {
        _why = outcome.Refusal;
        switch (_why)
        {
            case null:
                Navigation.NavigateTo($"/storeroom/materials/{id}");
                break;
            case MaterialStale stale:
                Merge(stale.Theirs, (ChangeMaterial)_form!);
                if (_differences.Count == 0)
                {
                    Navigation.NavigateTo($"/storeroom/materials/{id}"); // both typed the same
                }

                break;
            case IdUsedForAnother:
                _form!.RequestId = Guid.CreateVersion7();
                break;
        }
    }

    /// <summary>What only they touched is taken over; where both did, yours stays until you choose.</summary>
    private void Merge(ChangeMaterial theirs, ChangeMaterial yours)
    {
        _differences = MaterialFields.Compare(_opened!, theirs, yours);
        foreach (var difference in _differences.Where(d => d.OnlyTheirs))
        {
            difference.Field.Take(theirs, yours);
        }

        yours.Version = theirs.Version;
        _opened = theirs.Copy<ChangeMaterial>();
    }

    /// <summary>What is checked and saved: fields that pieces do not show must not refuse them unseen.</summary>
    private MaterialForm Judged() => _form!.StockedIn == StockUnit.Gram ? _form : _form with
    {
        Density = null, DensityAtCelsius = null, AlcoholValue = null, AlcoholBasis = null, FlashPointCelsius = null, TwentyDropsGrams = null,
    };
}
