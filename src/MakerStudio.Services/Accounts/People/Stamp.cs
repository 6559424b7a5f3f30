using System.Security.Cryptography;

namespace MakerStudio.Services.Accounts;

/// <summary>A fresh stamp: every sign-in that carries the old one has no power.</summary>
internal static class Stamp
{
    private const int Bytes = 20;

    public static string New() => Convert.ToHexString(RandomNumberGenerator.GetBytes(Bytes));
}
