using System.Text;
using MakerStudio.Services;
using MakerStudio.Services.Exchange;
using MakerStudio.Web.Account;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// <c>sample</c>: makes the sample studio where nothing is yet, and says how to enter it, at every start. A studio that is
/// no sample is left alone.
/// </summary>
internal static class SampleCommand
{
    /// <summary>Folder of the sample where <c>STUDIO_DATA</c> names none, so that practice never mixes with real records.</summary>
    public const string UsualFolder = "makerstudio-sample";

    /// <summary>In the data folder; only its owner may read it.</summary>
    internal const string SignInFile = "sample-sign-in.txt";

    public static Task OpenAsync(IServiceProvider services) => OpenAsync(
        services.GetRequiredService<SampleStudio>(), StudioDatabase.FolderOf(services.GetRequiredService<IConfiguration>(), UsualFolder),
        AccountLinks.AddressOf(services), Console.Out);

    /// <exception cref="HostingException">Another studio is here, or a sample whose making was broken off.</exception>
    internal static async Task OpenAsync(SampleStudio sample, string folder, Uri address, TextWriter output)
    {
        var path = Path.Combine(folder, SignInFile);
        var found = await sample.FindAsync();
        switch (found.State)
        {
            case SampleState.Empty:
                await MakeAsync(sample, path, address, output);
                break;
            case SampleState.Made:
                await output.WriteLineAsync(ReadKept(path) ?? Forgotten(path, folder));
                break;
            case SampleState.HalfMade:
                throw new HostingException(
                    $"The sample studio was not finished when it was last made. It holds nothing of yours: remove the folder {folder} (or empty the database it is in) and start again.");
            default:
                throw new HostingException(
                    $"{found.StudioName ?? "A studio"} is here already and is no sample; it was left as it is. Start it without the word sample, or name another folder for the sample in STUDIO_DATA.");
        }
    }

    private static async Task MakeAsync(SampleStudio sample, string path, Uri address, TextWriter output)
    {
        var signIns = SampleSignIns.Draw();
        var text = Words(signIns, address, path);

        // Kept first: a sample nobody can enter would be of no use.
        var notKept = Keep(path, text);
        await output.WriteLineAsync("Making the sample studio: six weeks of Ana and Bo at work. This takes a moment.");
        var outcome = await sample.MakeAsync(signIns);
        if (outcome.Refusal is { } refusal)
        {
            throw new HostingException(refusal.ToString());
        }

        var made = outcome.Expect();
        await output.WriteLineAsync($"Made in {made.Took.TotalSeconds:0} s.");
        await output.WriteLineAsync(text);
        if (notKept is not null)
        {
            await output.WriteLineAsync($"These could not be kept in {path} ({notKept}): write them down now.");
        }
    }

    private static string Words(SampleSignIns signIns, Uri address, string path) => $"""

        The sample studio, Quince Yard. Everything in it is invented. Enter it at {address}
          {signIns.Ana.Name,-4} {signIns.Ana.Passphrase}   owner
          {signIns.Bo.Name,-4} {signIns.Bo.Passphrase}   maker
        Drawn for this copy alone and kept in {path}, which only you can read.

        """;

    private static string Forgotten(string path, string folder) =>
        $"The sample studio is here; how to enter it is not in {path} any more. STUDIO_DATA={folder} ./deploy/studio reset-password Ana makes a new passphrase.";

    /// <summary>Why the text could not be kept; null when it was.</summary>
    private static string? Keep(string path, string text)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.Delete(path);
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using var file = new StreamWriter(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), options);
            file.Write(text);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return e.Message;
        }
    }

    private static string? ReadKept(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
