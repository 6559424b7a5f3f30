using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Storeroom;

public partial class OrderDraftPage
{
    private readonly SendOrder _send = new();
    private OrderReading _reading = new(new SendOrder(), []);
    private OrderSheet _sheet = OrderSheet.Empty;

    [Inject] private Purchasing Purchasing { get; set; } = default!;

    protected override string Home => "/storeroom/orders";

    private string? NotYet => _reading.Problems.Count > 0 ? StoreroomWords.Count(_reading.Problems.Count, "field") + " to mend"
        : Draft.Lines.Count == 0 ? "no line yet"
        : Draft.SupplierId is null ? "no supplier yet"
        : _sheet.Totals is null ? "a quantity or price is missing"
        : null;

    private RenderFragment LeadText => builder => builder.AddContent(0, _sheet.Totals is { } sums
        ? $"{StoreroomWords.Count(Draft.Lines.Count, "line")} for {AmountWords.Money(sums.Total)} in all. Nothing is in stock before its delivery is posted."
        : "What you want, in the supplier’s own units. It is kept as you type.");

    protected override OrderDraft Fresh() => new() { Lines = [new OrderLineDraft()] };

    protected override Task<OpenDraft<OrderDraft>?> FindAsync() => Purchasing.ReadDraftAsync(DraftId);

    protected override Task<Outcome<DraftKept>> KeepAsync(Actor actor, DateTimeOffset? seen) =>
        Purchasing.KeepAsync(actor, new KeepOrder { DraftId = DraftId, Seen = seen, Draft = Draft });

    protected override Task<Outcome<Nothing>> DiscardAsync(Actor actor) => Purchasing.DiscardAsync(actor, new DiscardOrder { DraftId = DraftId });

    protected override void UseSupplier(Guid id) => Draft.SupplierId = id;

    protected override async Task WorkOutAsync()
    {
        var reading = _reading = ReadOrder.From(Draft);
        var sheet = await Purchasing.WorkOutAsync(reading.Request);
        // Two fields left quickly make two questions; the answer to the older one may come last, and is dropped.
        _sheet = ReferenceEquals(reading, _reading) ? sheet : _sheet;
    }

    private Task AddLineAsync()
    {
        Draft.Lines.Add(new OrderLineDraft());
        return ChangedAsync();
    }

    private Task RemoveAsync(OrderLineDraft line)
    {
        Draft.Lines.Remove(line);
        return ChangedAsync();
    }

    private async Task SendAsync()
    {
        var outcome = await Purchasing.SendAsync(
            await Person.ActorAsync(), _reading.Request with { RequestId = _send.RequestId, DraftId = Keeper.KeptAt is null ? null : DraftId });
        Why = outcome.Refusal;
        if (outcome is Done<OrderSent> done)
        {
            Navigation.NavigateTo($"/storeroom/orders/{done.Value.Code}");
        }
        else if (Why is IdUsedForAnother)
        {
            _send.RequestId = Guid.CreateVersion7();
        }
    }

    private Task PutAwayAsync() => PutAwayAsync(Draft.Lines.Count, "Nothing was sent.");

    /// <summary>The tax is typed in per cent and sent as a fraction, so its field has two names.</summary>
    private string? Problem(string field) =>
        Problem(_reading.Problems, field) ?? (field == nameof(OrderDraft.Tax) ? Problem(_reading.Problems, nameof(SendOrder.TaxRate)) : null);
}
