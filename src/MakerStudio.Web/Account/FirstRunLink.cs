using MakerStudio.Services.Accounts;

namespace MakerStudio.Web.Account;

/// <summary>Printed at every start until the first person is there.</summary>
internal static class FirstRunLink
{
    public static async Task PrintAsync(IServiceProvider services)
    {
        if (await services.GetRequiredService<FirstRun>().IssueLinkAsync() is { } token)
        {
            // To the console alone, not into a log that is kept.
            await Console.Out.WriteLineAsync("Nobody is in this studio yet. The first person sets it up here; the link works once:");
            await Console.Out.WriteLineAsync(AccountLinks.FirstRun(AccountLinks.AddressOf(services), token));
        }
    }
}
