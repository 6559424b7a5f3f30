using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace MakerStudio.Web.Storeroom;

public partial class LotActs
{
    private enum Form { None, Count, Adjust, Retest, Place }

    private Form _form;
    private Refusal? _why;
    private string? _posted;
    private DateTimeOffset? _postedAt;
    private long? _undoable;
    private ReverseMovement? _undo;

    // Made before the click and kept until it was done, so that a press repeated over a bad line has one effect.
    private ReleaseLot _release = new();
    private OpenLot _open = new();
    private HoldLot _hold = new();
    private LiftHold _lift = new();
    private QuarantineLot _quarantine = new();
    private RejectLot _reject = new();

    [Inject] private Lots Lots { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private IDialogService Dialogs { get; set; } = default!;
    [Inject] private TimeProvider Clock { get; set; } = default!;

    [Parameter, EditorRequired] public LotRow Lot { get; set; } = default!;
    [Parameter] public EventCallback OnDone { get; set; }

    private string? NotYet => Lot.MissingPapers.Count == 0 ? null : $"{string.Join(" and ", Lot.MissingPapers.Select(PaperKinds.Name))} missing";

    private string Open(Form form) => _form == form ? "true" : "false";

    private void Toggle(Form form)
    {
        _form = _form == form ? Form.None : form;
        _why = null;
    }

    private async Task ReleaseAsync()
    {
        if (await TookAsync(Lots.ReleaseAsync(await Person.ActorAsync(), _release with { LotId = Lot.Id })))
        {
            _release = new();
        }
    }

    private async Task OpenAsync()
    {
        if (await TookAsync(Lots.OpenAsync(await Person.ActorAsync(), _open with { LotId = Lot.Id })))
        {
            _open = new();
        }
    }

    private async Task HoldAsync()
    {
        if (await ReasonAsync(new($"Put {Lot.Code} on hold?", $"Nothing is weighed from it until the hold is lifted. {AmountWords.Amount(Lot.OnHand, Lot.Unit)} stand still; both acts stay in the history.",
                $"Hold {Lot.Code}", Reason: "Why, in your words", Danger: true, Glyph: Glyphs.TwoBars)) is { } reason
            && await TookAsync(Lots.HoldAsync(await Person.ActorAsync(), _hold with { LotId = Lot.Id, Reason = reason })))
        {
            _hold = new();
        }
    }

    private async Task LiftAsync()
    {
        if (await ReasonAsync(new($"Lift the hold of {Lot.Code}?", $"It was held because: {Lot.StatusReason}.", "Lift the hold", Reason: "What was found")) is { } reason
            && await TookAsync(Lots.LiftHoldAsync(await Person.ActorAsync(), _lift with { LotId = Lot.Id, Reason = reason })))
        {
            _lift = new();
        }
    }

    private async Task QuarantineAsync()
    {
        if (await ReasonAsync(new($"Put {Lot.Code} back into quarantine?", "Nothing is weighed from it until it is released again.", $"Quarantine {Lot.Code}", Reason: "Why, in your words")) is { } reason
            && await TookAsync(Lots.QuarantineAsync(await Person.ActorAsync(), _quarantine with { LotId = Lot.Id, Reason = reason })))
        {
            _quarantine = new();
        }
    }

    private async Task RejectAsync()
    {
        if (await ReasonAsync(new($"Reject {Lot.Code} for good?", $"{AmountWords.Amount(Lot.OnHand, Lot.Unit)} can then only be adjusted out or sent back. No act makes a rejected lot usable again.",
                $"Reject {Lot.Code}", Reason: "Why, in your words", Danger: true, Glyph: Glyphs.Cross)) is { } reason
            && await TookAsync(Lots.RejectAsync(await Person.ActorAsync(), _reject with { LotId = Lot.Id, Reason = reason })))
        {
            _reject = new();
            _form = Form.None;
        }
    }

    private async Task<string?> ReasonAsync(QuestionText question)
    {
        var answer = await Dialogs.AskAsync(question);
        return answer.Chosen ? answer.Reason : null;
    }

    private async Task<bool> TookAsync<T>(Task<Outcome<T>> act)
    {
        _why = (await act).Refusal;
        await OnDone.InvokeAsync();
        return _why is null;
    }

    private Task AdjustedAsync((string What, LotAdjusted Outcome) adjusted) => PostedAsync(adjusted.What, adjusted.Outcome.MovementId);

    private Task CountedAsync(LotCounted counted) =>
        PostedAsync($"Count of {counted.Code}: {AmountWords.Change(counted.Variance, counted.Unit)}, worth {AmountWords.Money(counted.VarianceValue)}.", counted.MovementId, keepOpen: true);

    private async Task PostedAsync(string what, long? movement, bool keepOpen = false)
    {
        (_posted, _undoable, _postedAt, _undo) = (what, movement, movement is null ? null : Clock.GetUtcNow(), null);
        _form = keepOpen ? _form : Form.None;
        _why = null;
        await OnDone.InvokeAsync();
    }

    private async Task DoneAsync()
    {
        _form = Form.None;
        _why = null;
        await OnDone.InvokeAsync();
    }

    private async Task UndoAsync()
    {
        if (_undoable is not { } id)
        {
            return;
        }

        _undo ??= new ReverseMovement { MovementId = id, Reason = "Taken back at once" };
        await TookAsync(Lots.ReverseAsync(await Person.ActorAsync(), _undo));
        _postedAt = null;
    }
}
