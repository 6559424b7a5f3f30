using System.Globalization;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;

namespace MakerStudio.Web.Account;

/// <summary><c>reset-password NAME</c>: prints a one-time link for somebody who is locked out.</summary>
internal static class ResetPasswordCommand
{
    /// <param name="address">Where people reach the studio.</param>
    /// <returns>0 when the link was made, 1 when there is no such person, 2 when no name was given.</returns>
    public static async Task<int> RunAsync(IServiceProvider services, IReadOnlyList<string> words, Uri address, TextWriter output)
    {
        var name = string.Join(' ', words).Trim();
        if (name.Length == 0)
        {
            await output.WriteLineAsync("Whose passphrase? Type the name: reset-password Ana");
            return 2;
        }

        var outcome = await services.GetRequiredService<Invitations>().IssueNewPassphraseAsync(name);
        if (outcome is not Done<OneTimeLink> { Value: var link })
        {
            await output.WriteLineAsync(outcome.Refusal!.ToString());
            return 1;
        }

        var minutes = Invitations.NewPassphraseWithin.TotalMinutes.ToString("0", CultureInfo.InvariantCulture);
        await output.WriteLineAsync($"{link.Name} sets a new passphrase here, once, within {minutes} minutes:");
        await output.WriteLineAsync(AccountLinks.NewPassphrase(address, link.Token));
        return 0;
    }
}
