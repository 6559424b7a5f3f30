using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace MakerStudio.Web.Storeroom;

public partial class OrderDraftPage
{
    private readonly SendOrder _send = new();
    private readonly Keeper _keeper;
    private OrderDraft _draft = new();
    private OrderReading _reading = new(new SendOrder(), []);
    private OrderSheet _sheet = OrderSheet.Empty;
    private Refusal? _why;

    public OrderDraftPage() => _keeper = new Keeper(async seen => await Purchasing.KeepAsync(await Person.ActorAsync(), new KeepOrder { DraftId = DraftId, Seen = seen, Draft = _draft }));

    [Inject] private Purchasing Purchasing { get; set; } = default!;
    [Inject] private Suppliers SupplierList { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;
    [Inject] private IDialogService Dialogs { get; set; } = default!;

    [Parameter] public Guid DraftId { get; set; }
    [PersistentState] public OpenDraft<OrderDraft>? Opened { get; set; }
    [PersistentState] public List<SupplierRow>? Suppliers { get; set; }

    private string? NotYet => _reading.Problems.Count > 0 ? StoreroomWords.Count(_reading.Problems.Count, "field") + " to mend"
        : _draft.Lines.Count == 0 ? "no line yet"
        : _draft.SupplierId is null ? "no supplier yet"
        : _sheet.Totals is null ? "a quantity or price is missing"
        : null;

    private RenderFragment LeadText => builder => builder.AddContent(0, _sheet.Totals is { } sums
        ? $"{StoreroomWords.Count(_draft.Lines.Count, "line")} for {AmountWords.Money(sums.Total)} in all. Nothing is in stock before its delivery is posted."
        : "What you want, in the supplier’s own units. It is kept as you type.");

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
        Opened = await Purchasing.ReadDraftAsync(DraftId);
        _why = null;
        await UseAsync(Opened);
    }

    private Task UseAsync(OpenDraft<OrderDraft>? opened)
    {
        _keeper.KeptAt = opened?.KeptAt;
        _draft = opened?.Draft ?? new OrderDraft { Lines = [new OrderLineDraft()] };
        return WorkOutAsync();
    }

    private async Task WorkOutAsync()
    {
        var reading = _reading = ReadOrder.From(_draft);
        var sheet = await Purchasing.WorkOutAsync(reading.Request);
        // Two fields left quickly make two questions; the answer to the older one may come last, and is dropped.
        _sheet = ReferenceEquals(reading, _reading) ? sheet : _sheet;
    }

    /// <summary>After every field that is left: works out anew and keeps the draft as typed.</summary>
    private async Task ChangedAsync()
    {
        await WorkOutAsync();
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
        _draft.Lines.Add(new OrderLineDraft());
        return ChangedAsync();
    }

    private Task UseSupplierAsync(SupplierRow added)
    {
        Suppliers = [.. (Suppliers ?? []).Append(added).OrderBy(s => s.Name, StringComparer.CurrentCultureIgnoreCase)];
        _draft.SupplierId = added.Id;
        return ChangedAsync();
    }

    private Task RemoveAsync(OrderLineDraft line)
    {
        _draft.Lines.Remove(line);
        return ChangedAsync();
    }

    private async Task SendAsync()
    {
        var outcome = await Purchasing.SendAsync(
            await Person.ActorAsync(), _reading.Request with { RequestId = _send.RequestId, DraftId = _keeper.KeptAt is null ? null : DraftId });
        _why = outcome.Refusal;
        if (outcome is Done<OrderSent> done)
        {
            Navigation.NavigateTo($"/storeroom/orders/{done.Value.Code}");
        }
        else if (_why is IdUsedForAnother)
        {
            _send.RequestId = Guid.CreateVersion7();
        }
    }

    private async Task DiscardAsync()
    {
        var answer = await Dialogs.AskAsync(new QuestionText(
            "Put this draft away?", $"{StoreroomWords.Count(_draft.Lines.Count, "line")} as typed are gone for good. Nothing was sent.", "Put it away", Danger: true, Glyph: Glyphs.Bin));
        if (!answer.Chosen)
        {
            return;
        }

        _why = (await Purchasing.DiscardAsync(await Person.ActorAsync(), new DiscardOrder { DraftId = DraftId })).Refusal;
        if (_why is null)
        {
            Navigation.NavigateTo("/storeroom/orders");
        }
    }

    private string? Problem(string field) =>
        _reading.Problems.FirstOrDefault(p => p.Field == field)?.Problem
        ?? (_why as NotAcceptable)?.Problems.FirstOrDefault(p => p.Field == field || (field == "Tax" && p.Field == nameof(SendOrder.TaxRate)))?.Problem;
}
