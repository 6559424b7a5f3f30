using MakerStudio.Core.Materials;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Storeroom;

/// <summary>Types what a material's papers say of its safety.</summary>
public partial class SafetyPage
{
    private static readonly SetSafetyValidator Rules = new();

    private SetSafety? _form;
    private SetSafety? _opened;
    private SafetyDefault? _offered;
    private IReadOnlyList<SafetyDifference> _differences = [];
    private Refusal? _why;
    private bool _busy;
    private bool _unfit;

    /// <param name="Sheet">The newest SDS on file, whose edition a new form begins with.</param>
    public sealed record Shown(string Name, string? Cas, SetSafety Safety, PaperRow? Sheet, PaperRow? Certificate);

    [Inject] private Materials Materials { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;

    [Parameter] public Guid Id { get; set; }

    /// <summary>As first read, kept over the hand-over from the prerendered page.</summary>
    [PersistentState] public Shown? Data { get; set; }

    private string Back => $"/storeroom/materials/{Id}";

    protected override async Task OnInitializedAsync()
    {
        Data ??= await ReadAsync();
        if (Data is null)
        {
            Navigation.NotFound();
            return;
        }

        _opened = Data.Safety;
        _form = Data.Safety.Copy();
        _form.RequestId = Guid.CreateVersion7();
        _offered = SafetyDefault.For(Data.Cas);
        if (!_form.IsStated)
        {
            (_form.SheetEdition, _form.SheetDate) = (Data.Sheet?.Edition, Data.Sheet?.EditionDate);
            _form.CertificateIssuedOn = Data.Certificate?.EditionDate;
        }
    }

    private async Task<Shown?> ReadAsync()
    {
        var view = await Materials.ViewAsync(Id);
        var safety = await Materials.SafetyAsync(Id);
        return view is null || safety is null ? null : new(view.Facts.Name ?? "", view.Facts.Cas, safety, Newest(view, PaperKind.Sds), Newest(view, PaperKind.FragranceCertificate));
    }

    private static PaperRow? Newest(MaterialView view, PaperKind kind) =>
        view.Papers.Where(p => p.Kind == kind && p.LotId is null).MaxBy(p => p.EditionDate ?? DateOnly.MinValue);

    private async Task SaveAsync()
    {
        if (_busy)
        {
            return;
        }

        (_busy, _unfit) = (true, false);
        try
        {
            Show(await Materials.SetSafetyAsync(await Person.ActorAsync(), _form!));
        }
        finally
        {
            _busy = false;
        }
    }

    private void Show(Outcome<Nothing> outcome)
    {
        _why = outcome.Refusal;
        switch (_why)
        {
            case null:
                Navigation.NavigateTo(Back);
                break;
            case SafetyStale stale:
                Merge(stale.Theirs);
                break;
            case IdUsedForAnother:
                _form!.RequestId = Guid.CreateVersion7();
                break;
        }
    }

    /// <summary>What only they touched is taken over; where both did, yours stays until you choose.</summary>
    private void Merge(SetSafety theirs)
    {
        _differences = SafetyFields.Compare(_opened!, theirs, _form!);
        if (_differences.Count == 0)
        {
            Navigation.NavigateTo(Back); // both typed the same
            return;
        }

        foreach (var difference in _differences.Where(d => d.OnlyTheirs))
        {
            difference.Field.Take(theirs, _form!);
        }

        _form!.Version = theirs.Version;
        _opened = theirs.Copy();
    }
}
