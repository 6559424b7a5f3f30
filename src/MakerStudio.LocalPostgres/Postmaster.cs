using System.Diagnostics;

namespace MakerStudio.LocalPostgres;

/// <summary>One run of the server process, our child, in a session of its own so that Ctrl-C does not reach it.</summary>
internal sealed class Postmaster : IDisposable
{
    /// <summary>Recovery after a crash replays the log; this is the longest it is waited for.</summary>
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(5);

    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(25);

    /// <summary>Lines of the server's own words kept for a message.</summary>
    private const int WordsKept = 12;

    private readonly Process _process;
    private readonly Queue<string> _words = new();

    private Postmaster(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        process.StandardInput.Close();
    }

    public int ProcessId => _process.Id;

    public int ExitCode => _process.ExitCode;

    /// <summary>The last lines the server said on its own output.</summary>
    public string Words
    {
        get
        {
            lock (_words)
            {
                return string.Join(" | ", _words);
            }
        }
    }

    /// <summary>Starts the server and returns once it accepts connections, or once <paramref name="stop"/> is asked for.</summary>
    /// <exception cref="LocalPostgresException">It ended before it was ready.</exception>
    public static async Task<Postmaster> StartAsync(
        ClusterFolder folder, ServerBinaries binaries, IEnumerable<(string Name, string Value)> settings, CancellationToken stop)
    {
        var setSession = File.Exists("/usr/bin/setsid") ? "/usr/bin/setsid" : null;
        string[] command =
        [
            .. setSession is null ? Array.Empty<string>() : [setSession],
            binaries.Postgres, "-D", folder.Data,
            .. settings.SelectMany(setting => new[] { "-c", $"{setting.Name}={setting.Value}" }),
        ];
        var postmaster = new Postmaster(ServerCommand.Start(command[0], command[1..], folder.ServerUser));
        try
        {
            await postmaster.UntilReadyAsync(folder, stop);
            return postmaster;
        }
        catch
        {
            postmaster.Dispose();
            throw;
        }
    }

    public Task UntilExitAsync(CancellationToken stop) => _process.WaitForExitAsync(stop);

    public void Dispose() => _process.Dispose();

    private async Task UntilReadyAsync(ClusterFolder folder, CancellationToken stop)
    {
        var waited = Stopwatch.StartNew();
        while (waited.Elapsed < LongestStart)
        {
            if (_process.HasExited)
            {
                await _process.WaitForExitAsync(CancellationToken.None);
                throw new LocalPostgresException($"Postgres ended while starting (code {_process.ExitCode}): {Words} More is in {folder.Log}.");
            }

            var seen = PostmasterFile.Read(folder.Data);
            if (seen?.ProcessId == _process.Id && (seen.Ready || stop.IsCancellationRequested))
            {
                return;
            }

            await Task.Delay(Glance, CancellationToken.None);
        }

        throw new LocalPostgresException($"Postgres was not ready after {LongestStart.TotalMinutes} minutes. Its log is in {folder.Log}.");
    }

    private void Keep(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
        {
            return;
        }

        lock (_words)
        {
            _words.Enqueue(line);
            if (_words.Count > WordsKept)
            {
                _words.Dequeue();
            }
        }
    }
}

/// <summary>What the server says of itself in <c>postmaster.pid</c>.</summary>
internal sealed record PostmasterFile(int ProcessId, bool Ready)
{
    /// <summary>The last of the file's lines: starting, stopping, ready or standby.</summary>
    private const int StatusLine = 7;

    /// <summary>Reads the file; null when there is none or it is being written.</summary>
    public static PostmasterFile? Read(string data)
    {
        try
        {
            var lines = File.ReadAllLines(Path.Combine(data, "postmaster.pid"));
            return lines.Length > 0 && int.TryParse(lines[0], out var id)
                ? new PostmasterFile(id, lines.Length > StatusLine && lines[StatusLine].Trim() == "ready")
                : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>
    /// The server that runs on this data folder now, or null. A number left in the file by a killed server may belong
    /// to any other program by now, so the process must also stand in the data folder, as a server does.
    /// </summary>
    public static int? LivingServer(string data)
    {
        if (Read(data) is not { } file)
        {
            return null;
        }

        try
        {
            var stands = new DirectoryInfo($"/proc/{file.ProcessId}/cwd").ResolveLinkTarget(returnFinalTarget: true)?.FullName;
            var real = new DirectoryInfo(data).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? data;
            return stands == real ? file.ProcessId : null;
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
