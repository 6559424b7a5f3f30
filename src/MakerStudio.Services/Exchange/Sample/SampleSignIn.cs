using System.Security.Cryptography;
using MakerStudio.Services.Accounts;

namespace MakerStudio.Services.Exchange;

/// <summary>How somebody enters the sample studio.</summary>
public sealed record SampleSignIn(string Name, string Passphrase);

/// <summary>The two people of the sample studio. Their passphrases are drawn anew for every sample that is made.</summary>
public sealed record SampleSignIns(SampleSignIn Ana, SampleSignIn Bo)
{
    /// <summary>Letters that are not mistaken for one another when read from a screen.</summary>
    private const string Letters = "abcdefghjkmnpqrstuvwxyz";

    /// <summary>Sixteen of 23 letters are 72 random bits.</summary>
    private const int Groups = 4;
    private const int LettersInAGroup = 4;

    public static SampleSignIns Draw() => new(new SampleSignIn("Ana", DrawPassphrase("Ana")), new SampleSignIn("Bo", DrawPassphrase("Bo")));

    private static string DrawPassphrase(string name)
    {
        string drawn;
        do
        {
            drawn = string.Join('-', Enumerable.Range(0, Groups).Select(_ => new string(RandomNumberGenerator.GetItems<char>(Letters, LettersInAGroup))));
        }
        while (PassphraseRules.Problem(drawn, name, SampleStudio.Name) is not null);
        return drawn;
    }
}
