using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace MakerStudio.Services.Accounts;

/// <summary>The secret in a one-time link. The database keeps only its SHA-256.</summary>
public static class OneTimeToken
{
    private const int Bytes = 32;

    /// <summary>256 random bits as base64url, 43 letters.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    internal static bool IsShaped(string? token) => token is not null && Base64Url.IsValid(token, out var length) && length == Bytes;

    internal static byte[] Hash(string? token) => SHA256.HashData(Encoding.UTF8.GetBytes(token ?? ""));
}

/// <summary>A link that was just made. Its token is shown once and kept nowhere.</summary>
public sealed record OneTimeLink(string Name, string Token, DateTimeOffset ExpiresAt);

/// <summary>The link was used, withdrawn, replaced or is too old; which of these is nobody's business.</summary>
public sealed record LinkSpent : Refusal
{
    public override string Happened => "This link does not open anything (any more).";
    public override string Kept => "";
    public override string ToDo => "A link works once and for a limited time. Ask an owner of the studio for a new one.";
}
