using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace MakerStudio.Web.Storeroom;

/// <summary>
/// A page on which lines for a supplier are typed, worked out and kept at every field: an invoice, an order. The draft has
/// an address of its own, so that a reload finds it.
/// </summary>
public abstract class TypedPage<TDraft> : ComponentBase
    where TDraft : class, new()
{
    protected TypedPage() => Keeper = new Keeper(async seen => await KeepAsync(await Person.ActorAsync(), seen));

    [Inject] protected CurrentPerson Person { get; set; } = default!;
    [Inject] protected NavigationManager Navigation { get; set; } = default!;
    [Inject] private Suppliers SupplierList { get; set; } = default!;
    [Inject] private IDialogService Dialogs { get; set; } = default!;

    [Parameter] public Guid DraftId { get; set; }
    [PersistentState] public OpenDraft<TDraft>? Opened { get; set; }
    [PersistentState] public List<SupplierRow>? Suppliers { get; set; }

    protected Keeper Keeper { get; }

    protected TDraft Draft { get; private set; } = new();

    /// <summary>Why the last thing asked for was not done.</summary>
    protected Refusal? Why { get; set; }

    /// <summary>Where drafts of this kind are listed.</summary>
    protected abstract string Home { get; }

    /// <summary>What a page begins with that was never kept.</summary>
    protected abstract TDraft Fresh();

    protected abstract Task<OpenDraft<TDraft>?> FindAsync();

    protected abstract Task<Outcome<DraftKept>> KeepAsync(Actor actor, DateTimeOffset? seen);

    protected abstract Task<Outcome<Nothing>> DiscardAsync(Actor actor);

    protected abstract void UseSupplier(Guid id);

    /// <summary>Reads what is typed and works out what follows.</summary>
    protected abstract Task WorkOutAsync();

    protected override async Task OnInitializedAsync()
    {
        Suppliers ??= [.. await SupplierList.ListAsync()];
        if (Opened is null)
        {
            await ReadAsync();
        }
        else
        {
            await UseAsync();
        }
    }

    protected async Task ReadAsync()
    {
        Opened = await FindAsync();
        Why = null;
        await UseAsync();
    }

    /// <summary>After every field that is left: works out anew and keeps the draft as typed.</summary>
    protected async Task ChangedAsync()
    {
        await WorkOutAsync();
        await Keeper.KeepAsync();
        Why = Keeper.Why;
    }

    protected async Task KeepMineAsync(Stale theirs)
    {
        await Keeper.KeepOverAsync(theirs);
        Why = Keeper.Why;
    }

    protected Task UseSupplierAsync(SupplierRow added)
    {
        Suppliers = [.. (Suppliers ?? []).Append(added).OrderBy(s => s.Name, StringComparer.CurrentCultureIgnoreCase)];
        UseSupplier(added.Id);
        return ChangedAsync();
    }

    /// <param name="lines">As typed.</param>
    /// <param name="nothingYet">What has not happened: "Nothing was sent."</param>
    protected async Task PutAwayAsync(int lines, string nothingYet)
    {
        var answer = await Dialogs.AskAsync(new QuestionText(
            "Put this draft away?", $"{StoreroomWords.Count(lines, "line")} as typed are gone for good. {nothingYet}", "Put it away", Danger: true, Glyph: Glyphs.Bin));
        if (!answer.Chosen)
        {
            return;
        }

        Why = (await DiscardAsync(await Person.ActorAsync())).Refusal;
        if (Why is null)
        {
            Navigation.NavigateTo(Home);
        }
    }

    /// <summary>What is wrong with a field, from its reading or from the last answer.</summary>
    protected string? Problem(IReadOnlyList<FieldProblem> reading, string field) =>
        reading.Concat((Why as NotAcceptable)?.Problems ?? []).FirstOrDefault(p => p.Field == field)?.Problem;

    /// <summary>Reads what the page shows beside the draft that was just opened.</summary>
    protected virtual Task OpenedAsync() => Task.CompletedTask;

    private async Task UseAsync()
    {
        Keeper.KeptAt = Opened?.KeptAt;
        Draft = Opened?.Draft ?? Fresh();
        await OpenedAsync();
        await WorkOutAsync();
    }
}
