using System.Diagnostics;

namespace MakerStudio.LocalPostgres;

/// <summary>Runs a program of the server to its end, as the server's user.</summary>
internal static class ServerCommand
{
    /// <param name="user">The user to run as, or null for the user of this process.</param>
    /// <param name="input">Text for its standard input.</param>
    public static async Task<(int ExitCode, string Output)> RunAsync(
        string program, IReadOnlyList<string> arguments, string? user = null, string input = "", CancellationToken stop = default)
    {
        using var process = Start(program, arguments, user);
        var output = process.StandardOutput.ReadToEndAsync(stop);
        var errors = process.StandardError.ReadToEndAsync(stop);
        try
        {
            await process.StandardInput.WriteAsync(input.AsMemory(), stop);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended without reading all its input; its exit code and words say why.
        }

        var text = await output + await errors;
        await process.WaitForExitAsync(stop);
        return (process.ExitCode, text.Trim());
    }

    /// <summary>Runs a program and throws its own words, after <paramref name="purpose"/>, when it fails.</summary>
    public static async Task MustRunAsync(
        string purpose, string program, IReadOnlyList<string> arguments, string? user = null, string input = "", CancellationToken stop = default)
    {
        var (exitCode, output) = await RunAsync(program, arguments, user, input, stop);
        if (exitCode != 0)
        {
            throw new LocalPostgresException($"{purpose} did not succeed ({Path.GetFileName(program)} ended with {exitCode}): {output}");
        }
    }

    public static Process Start(string program, IReadOnlyList<string> arguments, string? user)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        };
        if (user is not null)
        {
            start.UserName = user;
        }

        // A PGDATA or PGHOST meant for another server must not lead these programs astray.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.Ordinal)).ToList())
        {
            start.Environment.Remove(name);
        }

        start.Environment["LC_ALL"] = "C";
        return Process.Start(start)!;
    }
}
