using MakerStudio.Core.Costing;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Storeroom;

public partial class ReceivePage
{
    private static readonly IReadOnlyList<Choice<FreightBasis>> Bases = [new(FreightBasis.Weight, "weight"), new(FreightBasis.Value, "value")];
    private readonly PostDelivery _post = new();
    private DeliveryReading _reading = new(new PostDelivery(), []);
    private DeliverySheet _sheet = DeliverySheet.Empty;
    private IReadOnlyDictionary<Guid, string> _orders = new Dictionary<Guid, string>();

    [Inject] private Deliveries Deliveries { get; set; } = default!;
    [Inject] private Purchasing Purchasing { get; set; } = default!;
    [Inject] private TimeProvider Clock { get; set; } = default!;
    [Inject] private ShellState Shell { get; set; } = default!;

    protected override string Home => "/storeroom";

    private string? NotYet => _reading.Problems.Count > 0 ? StoreroomWords.Count(_reading.Problems.Count, "field") + " to mend"
        : _sheet.OpenQuestions > 0 ? StoreroomWords.Count(_sheet.OpenQuestions, "question") + " open"
        : Draft.Lines.Count == 0 ? "no line yet"
        : null;

    private RenderFragment LeadText => builder => builder.AddContent(0, _sheet.Difference switch
    {
        _ when Draft.Lines.Count == 0 => "Type the invoice as it is. Each line becomes a lot with a landed cost; nothing is in stock before you post it.",
        0m => $"The lines add up to the invoice, {AmountWords.Money(_sheet.InvoiceTotal!.Value)}.",
        { } difference => $"The lines come to {AmountWords.Money(Math.Abs(difference))} {(difference > 0 ? "more" : "less")} than the invoice.",
        null when _sheet.Chosen is { } landed => $"The lines and freight come to {AmountWords.Money(landed.Total)}.",
        _ => "The sums follow as soon as every line has a quantity and a price.",
    });

    protected override DeliveryDraft Fresh() => new() { ReceivedOn = Core.Curing.StudioTime.Today(Clock, Shell.TimeZone), Lines = [new DeliveryLineDraft()] };

    protected override Task<OpenDraft<DeliveryDraft>?> FindAsync() => Deliveries.ReadDraftAsync(DraftId);

    protected override Task<Outcome<DraftKept>> KeepAsync(Actor actor, DateTimeOffset? seen) =>
        Deliveries.KeepAsync(actor, new KeepDelivery { DraftId = DraftId, Seen = seen, Draft = Draft });

    protected override Task<Outcome<Nothing>> DiscardAsync(Actor actor) => Deliveries.DiscardAsync(actor, new DiscardDelivery { DraftId = DraftId });

    protected override void UseSupplier(Guid id) => Draft.SupplierId = id;

    protected override async Task OpenedAsync() =>
        _orders = await Purchasing.CodesOfAsync(Draft.Lines.Select(l => l.OrderLineId).OfType<Guid>());

    protected override async Task WorkOutAsync()
    {
        var reading = _reading = ReadDelivery.From(Draft);
        var sheet = await Deliveries.WorkOutAsync(reading.Request);
        // Two fields left quickly make two questions; the answer to the older one may come last, and is dropped.
        _sheet = ReferenceEquals(reading, _reading) ? sheet : _sheet;
    }

    private Task AddLineAsync()
    {
        Draft.Lines.Add(new DeliveryLineDraft());
        return ChangedAsync();
    }

    private Task RemoveAsync(DeliveryLineDraft line)
    {
        Draft.Lines.Remove(line);
        return ChangedAsync();
    }

    private Task ChangeBasisAsync(FreightBasis basis)
    {
        Draft.FreightBasis = basis;
        return ChangedAsync();
    }

    private async Task PostAsync()
    {
        var outcome = await Deliveries.PostAsync(
            await Person.ActorAsync(), _reading.Request with { RequestId = _post.RequestId, DraftId = Keeper.KeptAt is null ? null : DraftId });
        Why = outcome.Refusal;
        if (outcome is Done<DeliveryPosted> done)
        {
            Navigation.NavigateTo($"/storeroom/deliveries/{done.Value.Code}");
            return;
        }

        await WorkOutAsync();
    }

    private Task PutAwayAsync() => PutAwayAsync(Draft.Lines.Count, "Nothing of them is in stock.");

    private string? Problem(string field) => Problem(_reading.Problems, field);

    private string? OrderOf(DeliveryLineDraft line) => line.OrderLineId is { } id && _orders.TryGetValue(id, out var code) ? $"Order {code}" : null;

    private DeliverySheetLine? SheetLine(int index) => index < _sheet.Lines.Count ? _sheet.Lines[index] : null;

    private LandedLine? LandedLine(int index) => _sheet.Chosen is { } landed && index < landed.Lines.Count ? landed.Lines[index] : null;
}
