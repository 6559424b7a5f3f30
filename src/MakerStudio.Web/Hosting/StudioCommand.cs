using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// A word after <c>./deploy/studio</c>. A new one is a line in <see cref="All"/>.
/// </summary>
/// <param name="Name">As it is typed.</param>
/// <param name="Takes">The names of what follows it, for the help; empty for nothing.</param>
/// <param name="Says">What it does, for the help.</param>
internal sealed record StudioCommand(string Name, string Takes, string Says)
{
    /// <summary>Does its work without a database and gives the exit code; null when it needs the studio.</summary>
    public Func<string[], Task<int>>? Alone { get; init; }

    /// <summary>
    /// Does its work with the studio's services on a migrated database and gives the exit code; null when the studio is to
    /// be served. May run beside an open studio.
    /// </summary>
    public Func<IServiceProvider, string[], Task<int>>? WithServices { get; init; }

    /// <summary>Runs before the studio is served, on a migrated database.</summary>
    public Func<IServiceProvider, Task>? BeforeServing { get; init; }

    /// <summary>Name of the data folder where STUDIO_DATA names none.</summary>
    public string UsualFolder { get; init; } = StudioDatabase.UsualFolder;

    public static readonly StudioCommand Serve = new("", "", "opens the studio at " + StudioFront.UsualAddress) { BeforeServing = FirstRunLink.PrintAsync };

    // The place for further commands: one line each.
    public static readonly IReadOnlyList<StudioCommand> All =
    [
        Serve,
        new("sample", "", "opens a studio to practise on, in a data folder of its own (" + SampleCommand.UsualFolder + "); made at the first start")
        {
            BeforeServing = SampleCommand.OpenAsync, UsualFolder = SampleCommand.UsualFolder,
        },
        new("verify", "", "recomputes every balance and cost from the ledger and lists what differs") { WithServices = VerifyAsync },
        new("assess", "FILE.json", "assesses the formula in a file (- reads standard input) and prints the result as JSON; needs no database")
        {
            Alone = words => AssessCommand.RunAsync(words, Console.OpenStandardInput, Console.OpenStandardOutput(), Console.Error, TimeProvider.System),
        },
        new("healthcheck", "", "asks the running studio whether it is ready; ends with 0 when it is") { Alone = _ => HealthCheck.AskAsync() },
        new("reset-password", "NAME", "prints a one-time link by which NAME sets a new passphrase")
        {
            WithServices = (services, words) => ResetPasswordCommand.RunAsync(services, words, AccountLinks.AddressOf(services), Console.Out),
        },
        new("help", "", "prints this list") { Alone = _ => SayAsync(Console.Out) },
    ];

    /// <summary>
    /// The command the first argument names and the words that follow it. Arguments that begin with a dash are settings
    /// for the host, so without a word the studio is served. Null, with the list printed, for a word that is none.
    /// </summary>
    public static async Task<(StudioCommand? Command, string[] Words)> ReadAsync(string[] args)
    {
        if (args.Length == 0 || args[0].StartsWith('-'))
        {
            return (Serve, args);
        }

        var command = All.FirstOrDefault(known => known.Name == args[0]);
        if (command is null)
        {
            await Console.Error.WriteLineAsync($"There is no command '{args[0]}'.");
            await SayAsync(Console.Error);
        }

        return (command, args[1..]);
    }

    private static async Task<int> VerifyAsync(IServiceProvider services, string[] words)
    {
        var (exitCode, text) = await VerifyCommand.RunAsync(services.GetRequiredService<Verify>());
        await Console.Out.WriteLineAsync(text);
        return exitCode;
    }

    private static async Task<int> SayAsync(TextWriter to)
    {
        await to.WriteLineAsync("./deploy/studio [command]");
        foreach (var command in All)
        {
            var typed = $"{(command.Name.Length == 0 ? "(no command)" : command.Name)} {command.Takes}";
            await to.WriteLineAsync($"  {typed,-24} {command.Says}");
        }

        return 0;
    }
}
