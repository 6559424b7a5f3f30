using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Accounts;

public sealed class InvitationsTests
{
    private static JoinStudio Join(string token, string name = "Cleo", string initials = "Cl") => new() { Token = token, Name = name, Initials = initials, Passphrase = Entry.Good };

    [Fact]
    public async Task Join_ByTheLink_MakesAPersonWhoCanActAndSignIn()
    {
        await using var studio = await TestStudio.NewAsync();
        var invite = new InvitePerson { Name = "Cleo", Role = PersonRole.Maker };
        (await studio.Get<Invitations>().InviteAsync(studio.Ana, invite)).Expect();

        var cleo = (await studio.Get<Invitations>().JoinAsync(Join(invite.Token))).Expect();

        Assert.Equal(PersonRole.Maker, cleo.Role);
        Assert.Equal(cleo.Id, (await studio.Get<Passphrases>().CheckAsync(" cleo ", Entry.Good)).Expect().Id);
        Assert.Equal(["Cleo joined", "Invited Cleo"], (await studio.Get<WhoDidWhat>().PageAsync()).Select(a => a.What));
        Assert.Empty(await studio.Get<Invitations>().WaitingAsync());
    }

    [Fact]
    public async Task Join_TwiceAndAtOnce_OneGetsIn()
    {
        await using var studio = await TestStudio.NewAsync();
        var invite = new InvitePerson { Name = "Cleo" };
        (await studio.Get<Invitations>().InviteAsync(studio.Ana, invite)).Expect();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(n => studio.Get<Invitations>().JoinAsync(Join(invite.Token, $"Cleo {n}", $"C{n}"))));

        Assert.Single(outcomes, o => o.Refusal is null);
        Assert.Equal(5, outcomes.Count(o => o.Refusal is LinkSpent));
        Assert.IsType<LinkSpent>((await studio.Get<Invitations>().JoinAsync(Join(invite.Token, "Late", "La"))).Refusal);
    }

    [Fact]
    public async Task Join_AfterSevenDaysOrWithdrawn_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var invitations = studio.Get<Invitations>();
        var old = new InvitePerson { Name = "Cleo" };
        (await invitations.InviteAsync(studio.Ana, old)).Expect();
        studio.Clock.Advance(Invitations.JoinWithin);
        Assert.IsType<LinkSpent>((await invitations.JoinAsync(Join(old.Token))).Refusal);

        var withdrawn = new InvitePerson { Name = "Cleo" };
        var row = (await invitations.InviteAsync(studio.Ana, withdrawn)).Expect();
        (await invitations.WithdrawAsync(studio.Ana, new WithdrawInvitation { InvitationId = row.Id })).Expect();
        Assert.IsType<LinkSpent>((await invitations.JoinAsync(Join(withdrawn.Token))).Refusal);
    }

    [Fact]
    public async Task Join_RefusedForAFieldOrATakenName_KeepsTheLink()
    {
        await using var studio = await TestStudio.NewAsync();
        var invitations = studio.Get<Invitations>();
        var invite = new InvitePerson { Name = "Cleo" };
        (await invitations.InviteAsync(studio.Ana, invite)).Expect();

        Assert.Equal("Name", Assert.Single(Assert.IsType<NotAcceptable>((await invitations.JoinAsync(Join(invite.Token, "ANA"))).Refusal).Problems).Field);
        Assert.Equal("Initials", Assert.Single(Assert.IsType<NotAcceptable>((await invitations.JoinAsync(Join(invite.Token, initials: "bo"))).Refusal).Problems).Field);
        var ofTheStudio = Join(invite.Token) with { Passphrase = "QuinceYardStudio1" };
        Assert.Equal("Passphrase", Assert.Single(Assert.IsType<NotAcceptable>((await invitations.JoinAsync(ofTheStudio)).Refusal).Problems).Field);
        (await invitations.JoinAsync(Join(invite.Token))).Expect();
    }

    [Fact]
    public async Task Invite_ByAMaker_IsForOwnersOnly()
    {
        await using var studio = await TestStudio.NewAsync();

        Assert.IsType<OwnersOnly>((await studio.Get<Invitations>().InviteAsync(studio.Bo, new InvitePerson { Name = "Cleo" })).Refusal);
    }

    [Fact]
    public async Task Invite_Repeated_IsOneInvitationWithTheSameLinkAndNoTokenIsStored()
    {
        await using var studio = await TestStudio.NewAsync();
        var invite = new InvitePerson { Name = "Cleo" };
        var first = (await studio.Get<Invitations>().InviteAsync(studio.Ana, invite)).Expect();
        var repeat = (await studio.Get<Invitations>().InviteAsync(studio.Ana, invite)).Expect();

        Assert.Equal(first.Id, repeat.Id);
        await using var db = studio.Db();
        Assert.DoesNotContain(await db.HandledRequests.Select(r => r.Outcome).ToListAsync(), o => o!.Contains(invite.Token, StringComparison.Ordinal));
        Assert.DoesNotContain(await db.Acts.Select(a => a.What).ToListAsync(), w => w.Contains(invite.Token, StringComparison.Ordinal));
    }

    [Fact]
    public async Task NewPassphrase_ByTheLink_WorksOnceWithinHalfAnHourAndEndsOtherSignIns()
    {
        await using var studio = await TestStudio.NewAsync();
        var invitations = studio.Get<Invitations>();
        var late = (await invitations.IssueNewPassphraseAsync("bo")).Expect();
        studio.Clock.Advance(Invitations.NewPassphraseWithin);
        Assert.IsType<LinkSpent>((await invitations.SetNewPassphraseAsync(new SetNewPassphrase { Token = late.Token, Passphrase = Entry.Good })).Refusal);

        var link = (await invitations.IssueNewPassphraseAsync("bo")).Expect();
        (await invitations.SetNewPassphraseAsync(new SetNewPassphrase { Token = link.Token, Passphrase = Entry.Good })).Expect();

        Assert.IsType<LinkSpent>((await invitations.SetNewPassphraseAsync(new SetNewPassphrase { Token = link.Token, Passphrase = Entry.Wrong })).Refusal);
        (await studio.Get<Passphrases>().CheckAsync("Bo", Entry.Good)).Expect();
        Assert.IsType<SignedOut>((await studio.Get<People>().RenameAsync(studio.Bo, new RenamePerson { PersonId = studio.Bo.PersonId, Name = "Bob", Initials = "Bo" })).Refusal);
    }

    [Fact]
    public async Task IssueNewPassphrase_ForNobody_SaysSo()
    {
        await using var studio = await TestStudio.NewAsync();

        Assert.Contains("Eve", (await studio.Get<Invitations>().IssueNewPassphraseAsync("Eve")).Refusal!.Happened, StringComparison.Ordinal);
    }
}
