using System.Text;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Accounts;

/// <summary>Names are what people sign in with: one present person a name, whatever the case.</summary>
internal static class PersonName
{
    public const int Longest = 60;

    public static string Normal(string name) => name.Trim().Normalize(NormalizationForm.FormC).ToUpperInvariant();

    public static IRuleBuilderOptions<T, string> IsName<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(n => n.Trim().Length is >= 1 and <= Longest && !n.Any(char.IsControl)).WithMessage($"A name has 1 to {Longest} letters.");

    public static IRuleBuilderOptions<T, string> AreInitials<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(i => i.Trim().Length is >= 1 and <= 3 && i.Trim().All(char.IsLetterOrDigit)).WithMessage("Initials are 1 to 3 letters; the records carry them.");

    /// <summary>Saves a person; a name or initials that somebody present has are refused.</summary>
    /// <returns>Null when saved.</returns>
    public static async Task<Refusal?> SavePersonAsync(this Command command, Guid personId, string name, string initials)
    {
        var taken = await command.Db.Users.Where(p => p.Id != personId && p.RemovedAt == null).Select(p => p.Initials).ToListAsync();
        if (taken.Contains(initials, StringComparer.OrdinalIgnoreCase))
        {
            return new NotAcceptable([new FieldProblem("Initials", $"Somebody here already writes {initials}.")]);
        }

        try
        {
            await command.Db.SaveChangesAsync();
            return null;
        }
        catch (DbUpdateException e) when (e.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation, TableName: "people" })
        {
            return new NotAcceptable([new FieldProblem("Name", $"Somebody here is already called {name}.")]);
        }
    }
}
