using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Commands;

/// <summary>How every command runs, shown on the smallest one: changing the studio's settings.</summary>
public class StudioStoreTests
{
    [Fact]
    public async Task Run_SameRequestThirtyTwoTimesAtOnce_HasOneEffect()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var request = await ChangeTo(settings, "Quince Yard");

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 32).Select(_ => Task.Run(() => settings.ChangeAsync(studio.Ana, request))));

        Assert.All(outcomes, o => Assert.IsType<Done<Nothing>>(o));
        await using var db = studio.Db();
        Assert.Equal(1, await db.Acts.CountAsync());
        Assert.Equal(1, await db.HandledRequests.CountAsync());
    }

    [Fact]
    public async Task Run_SameIdWithAnotherBody_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var request = await ChangeTo(settings, "Quince Yard");
        (await settings.ChangeAsync(studio.Ana, request)).Expect();

        var again = await settings.ChangeAsync(studio.Ana, request with { Name = "Another name" });

        Assert.IsType<IdUsedForAnother>(again.Refusal);
        Assert.Equal("Quince Yard", (await settings.ReadAsync())!.Name);
    }

    [Fact]
    public async Task Run_SignedOutEverywhere_LosesItsPowerAtTheNextCommand()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var request = await ChangeTo(settings, "Quince Yard");

        var outcome = await settings.ChangeAsync(studio.Ana with { Stamp = "an older stamp" }, request);

        Assert.IsType<SignedOut>(outcome.Refusal);
        Assert.Equal("Quince Yard Studio", (await settings.ReadAsync())!.Name);
    }

    [Fact]
    public async Task Run_MakerOnAnOwnersCommand_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        Assert.IsType<OwnersOnly>((await settings.ChangeAsync(studio.Bo, await ChangeTo(settings, "Bo's yard"))).Refusal);
    }

    [Fact]
    public async Task Run_EditFromAnOldVersion_IsStaleAndChangesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var first = await ChangeTo(settings, "First");
        var second = await ChangeTo(settings, "Second");
        (await settings.ChangeAsync(studio.Ana, first)).Expect();

        Assert.IsType<Stale>((await settings.ChangeAsync(studio.Ana, second)).Refusal);
        Assert.Equal("First", (await settings.ReadAsync())!.Name);
    }

    [Fact]
    public async Task Run_Committed_IsHeardByOpenScreens()
    {
        await using var studio = await TestStudio.NewAsync();
        var settings = studio.Get<StudioSettings>();
        var listening = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var heard = new TaskCompletionSource<News>(TaskCreationOptions.RunContinuationsAsynchronously);
        using var subscription = studio.Get<StudioNews>().Subscribe(news =>
        {
            _ = news == News.Anything ? listening.TrySetResult() : heard.TrySetResult(news);
            return Task.CompletedTask;
        });
        await studio.StartNewsAsync();
        await listening.Task.WaitAsync(TimeSpan.FromSeconds(60));

        (await settings.ChangeAsync(studio.Ana, await ChangeTo(settings, "Quince Yard"))).Expect();

        var news = await heard.Task.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Equal(Topics.Studio, news.Topic);
        Assert.Equal(studio.Ana.PersonId, news.PersonId);
    }

    private static async Task<ChangeStudio> ChangeTo(StudioSettings settings, string name)
    {
        var now = (await settings.ReadAsync())!;
        return new ChangeStudio
        {
            Name = name, TimeZone = now.TimeZone, Culture = now.Culture, LabourRatePerHour = now.LabourRatePerHour,
            OverheadPerBatch = now.OverheadPerBatch, OverheadPerUnit = now.OverheadPerUnit, TolerancePercent = now.TolerancePercent,
            ToleranceDivisions = now.ToleranceDivisions, RoundBatchUpToMilligrams = now.RoundBatchUpToMilligrams, Version = now.Version,
        };
    }
}
