using System.Security.Cryptography;

namespace MakerStudio.LocalPostgres;

/// <summary>
/// The roles' passwords: made once, kept in a file only its owner reads, in the form of libpq's pgpass so that
/// <c>PGPASSFILE=…/pgpass psql -h …/run -U studio_app studio</c> works.
/// </summary>
internal static class RolePasswords
{
    /// <summary>192 bits: beyond guessing.</summary>
    private const int PasswordBytes = 24;

    public static IReadOnlyDictionary<string, string> Make(string file, IEnumerable<string> roles)
    {
        var made = roles.ToDictionary(role => role, _ => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(PasswordBytes)));
        File.Delete(file);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using var stream = new FileStream(file, options);
        using var writer = new StreamWriter(stream);
        foreach (var (role, password) in made)
        {
            writer.Write($"*:*:*:{role}:{password}\n");
        }

        writer.Flush();
        stream.Flush(flushToDisk: true);
        return made;
    }

    public static IReadOnlyDictionary<string, string> Read(string file)
    {
        if (!File.Exists(file))
        {
            throw new LocalPostgresException(
                $"The file {file} with the database roles' passwords is missing, though the data are there. "
                + "Nothing was changed. Put it back from your copy of the folder.");
        }

        return File.ReadLines(file)
            .Select(line => line.Split(':'))
            .Where(fields => fields.Length == 5)
            .ToDictionary(fields => fields[3], fields => fields[4]);
    }
}
