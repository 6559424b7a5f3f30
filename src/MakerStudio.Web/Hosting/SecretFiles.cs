using System.Collections;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// Every setting may come from a file: the environment variable <c>KEY_FILE</c> sets <c>KEY</c> to the text of the file
/// it names, without the closing line break. So <c>ConnectionStrings__Studio_FILE=/run/secrets/studio</c> works.
/// </summary>
internal static class SecretFiles
{
    private const string Ending = "_FILE";

    public static WebApplicationBuilder AddSecretFiles(this WebApplicationBuilder builder)
    {
        builder.Configuration.AddInMemoryCollection(Read(Environment.GetEnvironmentVariables()));
        return builder;
    }

    /// <exception cref="HostingException">A file that is named cannot be read.</exception>
    internal static Dictionary<string, string?> Read(IDictionary environment)
    {
        var settings = new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase);
        foreach (DictionaryEntry variable in environment)
        {
            var name = (string)variable.Key;
            if (name.EndsWith(Ending, StringComparison.Ordinal) && IsOurs(name) && variable.Value is string { Length: > 0 } path)
            {
                settings[name[..^Ending.Length].Replace("__", ":", StringComparison.Ordinal)] = TextOf(name, path);
            }
        }

        return settings;
    }

    /// <summary>Other programs' variables (SSL_CERT_FILE and the like) are none of our business.</summary>
    private static bool IsOurs(string name) =>
        name.Contains("__", StringComparison.Ordinal) || name.StartsWith("STUDIO_", StringComparison.Ordinal);

    private static string TextOf(string name, string path)
    {
        try
        {
            return File.ReadAllText(path).TrimEnd('\r', '\n');
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw new HostingException($"{name} names the file {path}, which cannot be read: {unreadable.Message}", unreadable);
        }
    }
}

/// <summary>The host cannot start as it is set up; the message says what to change.</summary>
public sealed class HostingException : Exception
{
    public HostingException(string message) : base(message)
    {
    }

    public HostingException(string message, Exception cause) : base(message, cause)
    {
    }
}
