using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Accounts;

public sealed class FirstRunTests
{
    [Fact]
    public async Task SetUp_WithTheLink_MakesStudioOwnerScaleAndInvitation()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var request = Entry.SetUp((await studio.Get<FirstRun>().IssueLinkAsync())!) with { SecondName = "Bo" };

        var made = (await studio.Get<FirstRun>().SetUpAsync(request)).Expect();

        Assert.Equal(PersonRole.Owner, made.Owner.Role);
        Assert.Equal("Quince Yard Studio", (await studio.Get<StudioSettings>().ReadAsync())!.Name);
        Assert.Equal(100, Assert.Single(await studio.Get<StudioSettings>().ScalesAsync()).ReadabilityMilligrams);
        Assert.Equal("Bo", (await studio.Get<Invitations>().FindAsync(request.SecondToken, InvitationPurpose.Join))!.Name);
        var act = Assert.Single(await studio.Get<WhoDidWhat>().PageAsync());
        Assert.Equal(("Ana", "Set up Quince Yard Studio"), (act.Name, act.What));
        (await studio.Get<Passphrases>().CheckAsync("ana", Entry.Good)).Expect();
    }

    [Fact]
    public async Task SetUp_AfterTheFirstPersonExists_IsRefusedAndNoLinkIsMade()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var first = studio.Get<FirstRun>();
        var token = (await first.IssueLinkAsync())!;
        (await first.SetUpAsync(Entry.SetUp(token))).Expect();

        Assert.IsType<LinkSpent>((await first.SetUpAsync(Entry.SetUp(token) with { PersonName = "Eve", Initials = "Ev" })).Refusal);
        Assert.Null(await first.IssueLinkAsync());
        Assert.False(await first.IsWaitingAsync());
        Assert.Null(await studio.Get<Invitations>().FindAsync(token, InvitationPurpose.FirstPerson));
        Assert.Single(await studio.Get<People>().ListAsync());
    }

    [Fact]
    public async Task SetUp_TwoAtOnceByOneLink_OneGetsTheStudio()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var token = (await studio.Get<FirstRun>().IssueLinkAsync())!;
        string[] names = ["Ana", "Eve"];

        var outcomes = await Task.WhenAll(names.Select(name =>
            studio.Get<FirstRun>().SetUpAsync(Entry.SetUp(token) with { RequestId = Guid.CreateVersion7(), PersonName = name, Initials = name[..2] })));

        Assert.Single(outcomes, o => o.Refusal is null);
        Assert.Single(outcomes, o => o.Refusal is LinkSpent);
        Assert.Single(await studio.Get<People>().ListAsync());
    }

    [Fact]
    public async Task IssueLink_Again_ReplacesTheOneBeforeAndStoresNoToken()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var first = studio.Get<FirstRun>();
        var old = (await first.IssueLinkAsync())!;
        var present = (await first.IssueLinkAsync())!;

        Assert.IsType<LinkSpent>((await first.SetUpAsync(Entry.SetUp(old))).Refusal);
        await using var db = studio.Db();
        var stored = (await db.Invitations.SingleAsync()).TokenHash;
        Assert.Equal(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(present)), stored);
        (await first.SetUpAsync(Entry.SetUp(present))).Expect();
        Assert.DoesNotContain(await db.HandledRequests.Select(r => r.Outcome).ToListAsync(), o => o!.Contains(present, StringComparison.Ordinal));
    }

    [Fact]
    public async Task SetUp_WithProblems_NamesEachFieldAndKeepsTheLink()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var first = studio.Get<FirstRun>();
        var token = (await first.IssueLinkAsync())!;
        var bad = Entry.SetUp(token) with
        {
            Name = "", Currency = "XYZ", Initials = "long", Passphrase = "password1234", SecondName = "ANA", Scales = [new NewScale("Scale", 100, 100)],
        };

        var problems = Assert.IsType<NotAcceptable>((await first.SetUpAsync(bad)).Refusal).Problems.Select(p => p.Field).ToHashSet();

        Assert.Superset(new HashSet<string> { "Name", "Currency", "Initials", "Passphrase", "SecondName", "Scales[0].CapacityMilligrams" }, problems);
        (await first.SetUpAsync(Entry.SetUp(token))).Expect();
    }
}
