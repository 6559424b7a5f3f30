using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Accounts;

public sealed class PeopleTests
{
    [Fact]
    public async Task Remove_Maker_SignInIsDeadAndHistoryKeepsTheName()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.SetPassphraseAsync("Bo");
        var bo = await studio.SignedInAsync("Bo");

        (await studio.Get<People>().RemoveAsync(studio.Ana, new RemovePerson { PersonId = bo.PersonId })).Expect();

        Assert.IsType<DoesNotFit>((await studio.Get<Passphrases>().CheckAsync("Bo", Entry.Good)).Refusal);
        Assert.False(await studio.Get<People>().IsSignedInAsync(bo));
        Assert.IsType<SignedOut>((await studio.Get<People>().SignOutEverywhereAsync(bo, new SignOutEverywhere { PersonId = bo.PersonId })).Refusal);
        Assert.NotNull((await studio.Get<Invitations>().IssueNewPassphraseAsync("Bo")).Refusal);
        Assert.Contains(await studio.Get<WhoDidWhat>().PageAsync(), a => a.Name == "Bo" && a.What == "Bo set a new passphrase");
        Assert.NotNull((await studio.Get<People>().FindAsync(bo.PersonId))!.RemovedAt);
    }

    [Fact]
    public async Task Remove_NameIsFreeForSomebodyNew()
    {
        await using var studio = await TestStudio.NewAsync();
        (await studio.Get<People>().RemoveAsync(studio.Ana, new RemovePerson { PersonId = studio.Bo.PersonId })).Expect();
        var invite = new InvitePerson { Name = "Bo" };
        (await studio.Get<Invitations>().InviteAsync(studio.Ana, invite)).Expect();

        var bo = (await studio.Get<Invitations>().JoinAsync(new JoinStudio { Token = invite.Token, Name = "Bo", Initials = "Bo", Passphrase = Entry.Good })).Expect();

        Assert.NotEqual(studio.Bo.PersonId, bo.Id);
    }

    /// <summary>Real commits, many rounds: whatever the order, one owner is left.</summary>
    [Fact]
    public async Task Remove_TwoOwnersEachOtherAtOnce_ExactlyOneStays()
    {
        for (var round = 0; round < 10; round++)
        {
            await using var studio = await TestStudio.NewAsync();
            var people = studio.Get<People>();
            (await people.ChangeRoleAsync(studio.Ana, new ChangeRole { PersonId = studio.Bo.PersonId, Role = PersonRole.Owner })).Expect();

            var outcomes = await Task.WhenAll(
                people.RemoveAsync(studio.Ana, new RemovePerson { PersonId = studio.Bo.PersonId }),
                people.RemoveAsync(studio.Bo, new RemovePerson { PersonId = studio.Ana.PersonId }));

            Assert.Single(outcomes, o => o.Refusal is null);
            Assert.Single(outcomes, o => o.Refusal is SignedOut);
            Assert.Single(await people.ListAsync(), p => p.RemovedAt is null && p.Role == PersonRole.Owner);
        }
    }

    [Fact]
    public async Task ChangeRole_TwoOwnersEachOtherAtOnce_OneOwnerStays()
    {
        for (var round = 0; round < 5; round++)
        {
            await using var studio = await TestStudio.NewAsync();
            var people = studio.Get<People>();
            (await people.ChangeRoleAsync(studio.Ana, new ChangeRole { PersonId = studio.Bo.PersonId, Role = PersonRole.Owner })).Expect();

            await Task.WhenAll(
                people.ChangeRoleAsync(studio.Ana, new ChangeRole { PersonId = studio.Bo.PersonId, Role = PersonRole.Maker }),
                people.ChangeRoleAsync(studio.Bo, new ChangeRole { PersonId = studio.Ana.PersonId, Role = PersonRole.Maker }));

            Assert.Single(await people.ListAsync(), p => p.Role == PersonRole.Owner);
        }
    }

    [Fact]
    public async Task LastOwner_CannotLeaveOrBecomeAMaker()
    {
        await using var studio = await TestStudio.NewAsync();
        var people = studio.Get<People>();

        Assert.IsType<LastOwner>((await people.RemoveAsync(studio.Ana, new RemovePerson { PersonId = studio.Ana.PersonId })).Refusal);
        Assert.IsType<LastOwner>((await people.ChangeRoleAsync(studio.Ana, new ChangeRole { PersonId = studio.Ana.PersonId, Role = PersonRole.Maker })).Refusal);
        Assert.True(await people.IsSignedInAsync(studio.Ana));
    }

    [Fact]
    public async Task Maker_HasNoPowerOverOthers()
    {
        await using var studio = await TestStudio.NewAsync();
        var people = studio.Get<People>();
        var ana = studio.Ana.PersonId;

        Assert.IsType<OwnersOnly>((await people.RemoveAsync(studio.Bo, new RemovePerson { PersonId = ana })).Refusal);
        Assert.IsType<OwnersOnly>((await people.ChangeRoleAsync(studio.Bo, new ChangeRole { PersonId = studio.Bo.PersonId, Role = PersonRole.Owner })).Refusal);
        Assert.IsType<OwnersOnly>((await people.SignOutEverywhereAsync(studio.Bo, new SignOutEverywhere { PersonId = ana })).Refusal);
        Assert.IsType<OwnersOnly>((await people.RenameAsync(studio.Bo, new RenamePerson { PersonId = ana, Name = "Anna", Initials = "An" })).Refusal);
        Assert.IsType<OwnersOnly>((await studio.Get<Invitations>().IssueNewPassphraseAsync(studio.Bo, new IssueNewPassphrase { PersonId = ana })).Refusal);
    }

    [Fact]
    public async Task SignOutEverywhere_OpenPage_LosesItsPowerAtTheNextCommand()
    {
        await using var studio = await TestStudio.NewAsync();
        var people = studio.Get<People>();

        (await people.SignOutEverywhereAsync(studio.Bo, new SignOutEverywhere { PersonId = studio.Bo.PersonId })).Expect();

        Assert.IsType<SignedOut>((await people.RenameAsync(studio.Bo, new RenamePerson { PersonId = studio.Bo.PersonId, Name = "Bob", Initials = "Bb" })).Refusal);
        var again = await studio.SignedInAsync("Bo");
        (await people.RenameAsync(again, new RenamePerson { PersonId = again.PersonId, Name = "Bob", Initials = "Bb" })).Expect();
        Assert.Equal(("Bob", "Bb"), ((await people.FindAsync(again.PersonId))!.Name, (await people.FindAsync(again.PersonId))!.Initials));
    }

    [Fact]
    public async Task Rename_ToANameThatIsTaken_IsRefusedWhateverTheCase()
    {
        await using var studio = await TestStudio.NewAsync();

        var refusal = (await studio.Get<People>().RenameAsync(studio.Bo, new RenamePerson { PersonId = studio.Bo.PersonId, Name = "aNA", Initials = "Bo" })).Refusal;

        Assert.Equal("Name", Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Field);
        Assert.Equal("Bo", (await studio.Get<People>().FindAsync(studio.Bo.PersonId))!.Name);
    }

    [Fact]
    public async Task Names_OfThisDevice_LeaveOutWhoWasRemoved()
    {
        await using var studio = await TestStudio.NewAsync();
        var people = studio.Get<People>();
        Guid[] ids = [studio.Bo.PersonId, studio.Ana.PersonId, Guid.CreateVersion7()];
        Assert.Equal(["Ana", "Bo"], await people.NamesAsync(ids));

        (await people.RemoveAsync(studio.Ana, new RemovePerson { PersonId = studio.Bo.PersonId })).Expect();

        Assert.Equal(["Ana"], await people.NamesAsync(ids));
    }

    [Fact]
    public async Task Acts_MoreThanAPage_PageByKeyWithoutGapOrRepeat()
    {
        await using var studio = await TestStudio.NewAsync();
        var people = studio.Get<People>();
        for (var n = 0; n < WhoDidWhat.PageLength + 3; n++)
        {
            (await people.RenameAsync(studio.Bo, new RenamePerson { PersonId = studio.Bo.PersonId, Name = $"Bo {n}", Initials = "Bo" })).Expect();
        }

        var first = await studio.Get<WhoDidWhat>().PageAsync();
        var second = await studio.Get<WhoDidWhat>().PageAsync(first[^1].Id);

        Assert.Equal((WhoDidWhat.PageLength, 3), (first.Count, second.Count));
        Assert.Equal(first.Count + second.Count, first.Concat(second).Select(a => a.Id).Distinct().Count());
        Assert.Equal("Renamed Bo to Bo 0", second[^1].What);
    }
}
