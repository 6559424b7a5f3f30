using MakerStudio.Services.Schema;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Services.Accounts;

/// <summary>PBKDF2 with HMAC-SHA-512 and a salt of its own for every passphrase.</summary>
internal static class PassphraseHash
{
    /// <summary>
    /// Rounds. The OWASP Password Storage Cheat Sheet asks for 210,000 with HMAC-SHA-512 (from memory); some more were chosen.
    /// </summary>
    public const int Iterations = 220_000;

    private static readonly PasswordHasher<Person> Hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = Iterations }));

    // The hasher looks at no person; one is handed in because it must be.
    private static readonly Person Nobody = new() { DisplayName = "", Initials = "" };

    /// <summary>Compared against when no such person is here, so that the answer takes as long.</summary>
    private static readonly string OfNobody = Of(Guid.NewGuid().ToString());

    public static string Of(string passphrase) => Hasher.HashPassword(Nobody, passphrase);

    /// <param name="hash">Null for nobody: the work is done all the same and the answer is no.</param>
    public static bool Fits(string? hash, string passphrase)
    {
        var verdict = Hasher.VerifyHashedPassword(Nobody, hash ?? OfNobody, passphrase);
        return hash is not null && verdict != PasswordVerificationResult.Failed;
    }
}
