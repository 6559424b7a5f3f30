using System.Diagnostics;
using System.Globalization;
using MakerStudio.Services.Accounts;

namespace MakerStudio.Services.Exchange;

/// <summary>What a database holds when a sample studio is asked for.</summary>
public enum SampleState
{
    /// <summary>Nobody has set up a studio: a sample may be made.</summary>
    Empty,

    /// <summary>The sample is there, as it was left.</summary>
    Made,

    /// <summary>A sample whose making was broken off.</summary>
    HalfMade,

    /// <summary>A real studio.</summary>
    OtherStudio,
}

/// <param name="StudioName">Null in an empty database.</param>
public sealed record SampleFound(SampleState State, string? StudioName);

/// <param name="Acts">How many things Ana and Bo did.</param>
public sealed record SampleMade(int Acts, TimeSpan Took);

/// <summary>A sample is made in an empty database only.</summary>
public sealed record NotEmpty(string StudioName) : Refusal
{
    public override string Happened => $"{StudioName} is here already.";
    public override string Kept => "It was left as it is.";
    public override string ToDo => "Make the sample studio in a data folder of its own.";
}

/// <summary>
/// Quince Yard Studio, to learn on: six weeks of two invented people at work, made by asking the services for each act
/// as a page would, on a clock that goes through those weeks. Its last date is now, so that something is always due.
/// </summary>
public sealed class SampleStudio(StudioStore store)
{
    public const string Name = "Quince Yard Studio";

    /// <summary>Its name until the last act, by which a making that was broken off is known.</summary>
    internal const string NameWhileMade = Name + " (being made)";

    private const string Culture = "en-IE";

    public async Task<SampleFound> FindAsync(CancellationToken cancel = default)
    {
        var studio = await new StudioSettings(store).ReadAsync(cancel);
        if (studio is null)
        {
            return new SampleFound(await new FirstRun(store).IsWaitingAsync(cancel) ? SampleState.Empty : SampleState.OtherStudio, null);
        }

        var state = !studio.IsSample ? SampleState.OtherStudio : studio.Name == NameWhileMade ? SampleState.HalfMade : SampleState.Made;
        return new SampleFound(state, studio.Name);
    }

    /// <summary>Makes the sample in an empty database; takes some seconds.</summary>
    public async Task<Outcome<SampleMade>> MakeAsync(SampleSignIns signIns, CancellationToken cancel = default)
    {
        var found = await FindAsync(cancel);
        if (found.State != SampleState.Empty)
        {
            return new NotEmpty(found.StudioName ?? "A studio");
        }

        // Notes in the ledger are written in the studio's marks; the change ends with this method.
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(Culture);
        var took = Stopwatch.StartNew();
        var story = new Story(store, signIns, Culture);
        await story.OpenAsync();
        SampleAct[] acts =
        [
            .. new SampleMarket(story).Acts(), .. new SampleMaterials(story).Acts(), .. new SampleDeliveries(story).Acts(), .. new SamplePriceBreaks(story).Acts(), .. new SampleOrders(story).Acts(), .. new SampleFormulas(story).Acts(),
            .. new SampleLots(story).Acts(), .. new SampleBatches(story).Acts(), .. new SampleBatchesNow(story).Acts(),
            .. new SamplePrices(story).Acts(), .. new SampleGoods(story).Acts(), .. new SampleLabels(story).Acts(),
        ];
        foreach (var act in acts.OrderBy(a => a.At))
        {
            cancel.ThrowIfCancellationRequested();
            story.Clock.Reach(act.At);
            await act.DoAsync();
        }

        await story.FinishAsync();
        await new SampleLabels(story).ConfirmAsync();
        return new SampleMade(acts.Length, took.Elapsed);
    }
}

/// <summary>Something that happens in the story, at its moment. Acts of one moment keep the order they are told in.</summary>
internal sealed record SampleAct(DateTimeOffset At, Func<Task> DoAsync);
