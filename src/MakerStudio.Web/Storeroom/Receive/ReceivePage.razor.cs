using MakerStudio.Core.Costing;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Fields;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace MakerStudio.Web.Storeroom;

public partial class ReceivePage
{
    private static readonly IReadOnlyList<Choice<FreightBasis>> Bases = [new(FreightBasis.Weight, "weight"), new(FreightBasis.Value, "value")];
    private readonly PostDelivery _post = new();
    private DeliveryDraft _draft = new();
    private DeliveryReading _reading = new(new PostDelivery(), []);
    private DeliverySheet _sheet = DeliverySheet.Empty;
    private readonly Keeper _keeper;
    private IReadOnlyDictionary<Guid, string> _orders = new Dictionary<Guid, string>();
    private Refusal? _why;

    public ReceivePage() => _keeper = new Keeper(async seen => await Deliveries.KeepAsync(await Person.ActorAsync(), new KeepDelivery { DraftId = DraftId, Seen = seen, Draft = _draft }));

    [Inject] private Deliveries Deliveries { get; set; } = default!;
    [Inject] private Purchasing Purchasing { get; set; } = default!;
    [Inject] private Suppliers SupplierList { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;
    [Inject] private IDialogService Dialogs { get; set; } = default!;
    [Inject] private TimeProvider Clock { get; set; } = default!;
    [Inject] private ShellState Shell { get; set; } = default!;

    [Parameter] public Guid DraftId { get; set; }
    [PersistentState] public OpenDraft<DeliveryDraft>? Opened { get; set; }
    [PersistentState] public List<SupplierRow>? Suppliers { get; set; }

    private string? NotYet => _reading.Problems.Count > 0 ? StoreroomWords.Count(_reading.Problems.Count, "field") + " to mend"
        : _sheet.OpenQuestions > 0 ? StoreroomWords.Count(_sheet.OpenQuestions, "question") + " open"
        : _draft.Lines.Count == 0 ? "no line yet"
        : null;

    private RenderFragment LeadText => builder => builder.AddContent(0, _sheet.Difference switch
    {
        _ when _draft.Lines.Count == 0 => "Type the invoice as it is. Each line becomes a lot with a landed cost; nothing is in stock before you post it.",
        0m => $"The lines add up to the invoice, {AmountWords.Money(_sheet.InvoiceTotal!.Value)}.",
        { } difference => $"The lines come to {AmountWords.Money(Math.Abs(difference))} {(difference > 0 ? "more" : "less")} than the invoice.",
        null when _sheet.Chosen is { } landed => $"The lines and freight come to {AmountWords.Money(landed.Total)}.",
        _ => "The sums follow as soon as every line has a quantity and a price.",
    });

    protected override async Task OnInitializedAsync()
    {
        Suppliers ??= [.. await SupplierList.ListAsync()];
        if (Opened is null)
        {
            await ReadAsync();
        }
        else
        {
            await UseAsync(Opened);
        }
    }

    private async Task ReadAsync()
    {
        Opened = await Deliveries.ReadDraftAsync(DraftId);
        _why = null;
        await UseAsync(Opened);
    }

    private async Task UseAsync(OpenDraft<DeliveryDraft>? opened)
    {
        _keeper.KeptAt = opened?.KeptAt;
        _draft = opened?.Draft ?? new DeliveryDraft { ReceivedOn = Core.Curing.StudioTime.Today(Clock, Shell.TimeZone), Lines = [new DeliveryLineDraft()] };
        _orders = await Purchasing.CodesOfAsync(_draft.Lines.Select(l => l.OrderLineId).OfType<Guid>());
        await WorkOutAsync();
    }

    private async Task WorkOutAsync()
    {
        var reading = _reading = ReadDelivery.From(_draft);
        var sheet = await Deliveries.WorkOutAsync(reading.Request);
        // Two fields left quickly make two questions; the answer to the older one may come last, and is dropped.
        _sheet = ReferenceEquals(reading, _reading) ? sheet : _sheet;
    }

    /// <summary>After every field that is left: works out anew and keeps the draft as typed.</summary>
    private async Task ChangedAsync()
    {
        await WorkOutAsync();
        await KeepAsync();
    }

    private async Task KeepAsync()
    {
        await _keeper.KeepAsync();
        _why = _keeper.Why;
    }

    private async Task KeepMineAsync(Stale theirs)
    {
        await _keeper.KeepOverAsync(theirs);
        _why = _keeper.Why;
    }

    private Task AddLineAsync()
    {
        _draft.Lines.Add(new DeliveryLineDraft());
        return ChangedAsync();
    }

    private Task UseSupplierAsync(SupplierRow added)
    {
        Suppliers = [.. (Suppliers ?? []).Append(added).OrderBy(s => s.Name, StringComparer.CurrentCultureIgnoreCase)];
        _draft.SupplierId = added.Id;
        return ChangedAsync();
    }

    private Task RemoveAsync(DeliveryLineDraft line)
    {
        _draft.Lines.Remove(line);
        return ChangedAsync();
    }

    private Task ChangeBasisAsync(FreightBasis basis)
    {
        _draft.FreightBasis = basis;
        return ChangedAsync();
    }

    private async Task PostAsync()
    {
        var outcome = await Deliveries.PostAsync(
            await Person.ActorAsync(), _reading.Request with { RequestId = _post.RequestId, DraftId = _keeper.KeptAt is null ? null : DraftId });
        _why = outcome.Refusal;
        if (outcome is Done<DeliveryPosted> done)
        {
            Navigation.NavigateTo($"/storeroom/deliveries/{done.Value.Code}");
            return;
        }

        await WorkOutAsync();
    }

    private async Task DiscardAsync()
    {
        var answer = await Dialogs.AskAsync(new QuestionText(
            "Put this draft away?", $"{StoreroomWords.Count(_draft.Lines.Count, "line")} as typed are gone for good. Nothing of them is in stock.", "Put it away", Danger: true, Glyph: Glyphs.Bin));
        if (!answer.Chosen)
        {
            return;
        }

        _why = (await Deliveries.DiscardAsync(await Person.ActorAsync(), new DiscardDelivery { DraftId = DraftId })).Refusal;
        if (_why is null)
        {
            Navigation.NavigateTo("/storeroom");
        }
    }

    private string? Problem(string field) =>
        _reading.Problems.FirstOrDefault(p => p.Field == field)?.Problem
        ?? (_why as NotAcceptable)?.Problems.FirstOrDefault(p => p.Field == field)?.Problem;

    private string? OrderOf(DeliveryLineDraft line) => line.OrderLineId is { } id && _orders.TryGetValue(id, out var code) ? $"Order {code}" : null;

    private DeliverySheetLine? SheetLine(int index) => index < _sheet.Lines.Count ? _sheet.Lines[index] : null;

    private LandedLine? LandedLine(int index) => _sheet.Chosen is { } landed && index < landed.Lines.Count ? landed.Lines[index] : null;
}
