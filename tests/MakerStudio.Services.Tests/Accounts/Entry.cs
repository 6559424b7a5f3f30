using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Accounts;

/// <summary>Ways into a test studio: passphrases, present stamps, a studio nobody has set up.</summary>
internal static class Entry
{
    public const string Good = "marmalade under the bench";
    public const string Wrong = "marmalade upon the bench";

    public static async Task SetPassphraseAsync(this TestStudio studio, string name, string passphrase = Good)
    {
        var invitations = studio.Get<Invitations>();
        var link = (await invitations.IssueNewPassphraseAsync(name)).Expect();
        (await invitations.SetNewPassphraseAsync(new SetNewPassphrase { Token = link.Token, Passphrase = passphrase })).Expect();
    }

    /// <summary>A sign-in of now, by the stamp in the database.</summary>
    public static async Task<Actor> SignedInAsync(this TestStudio studio, string name)
    {
        await using var db = studio.Db();
        var person = await db.Users.SingleAsync(p => p.DisplayName == name && p.RemovedAt == null);
        return new Actor(person.Id, person.SecurityStamp!);
    }

    public static async Task EmptyAsync(this TestStudio studio)
    {
        await using var db = studio.Db();
        await db.Users.ExecuteDeleteAsync();
        await db.Scales.ExecuteDeleteAsync();
        await db.Studio.ExecuteDeleteAsync();
    }

    public static SetUpStudio SetUp(string token) => new()
    {
        Token = token, Name = "Quince Yard Studio", Address = "4 Quince Yard", Currency = "EUR", PersonName = "Ana", Initials = "An", Passphrase = Good,
        Scales = [new NewScale("Scale 2", 5_000_000, 100)],
    };
}
