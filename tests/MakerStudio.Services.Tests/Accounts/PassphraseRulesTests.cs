using MakerStudio.Services.Accounts;

namespace MakerStudio.Services.Tests.Accounts;

public sealed class PassphraseRulesTests
{
    [Theory]
    [InlineData("marmalade under the bench")]
    [InlineData("banana milk sunset")]
    [InlineData("kettle rope 14 fern")]
    [InlineData("zwei nasse Handtücher")]
    [InlineData("дождь на крыше")]
    [InlineData("xK9#vQ2!mR7@")]
    [InlineData("ihr macht das gut so")]
    public void Problem_WordsOfOnesOwn_None(string passphrase) => Assert.Null(PassphraseRules.Problem(passphrase, "Ana", "Quince Yard Studio"));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("elevenchars")]
    [InlineData("password1234")]
    [InlineData("P@ssw0rd!2026")]
    [InlineData("PasswordPassword")]
    [InlineData("welcome12345!")]
    [InlineData("aaaaaaaaaaaaaa")]
    [InlineData("abababababab")]
    [InlineData("abc123abc123")]
    [InlineData("lampe!lampe!lampe!")]
    [InlineData("qwertyuiop[]")]
    [InlineData("123456789012")]
    [InlineData("asdfghjkl;'#")]
    [InlineData("abcdefghijklm")]
    [InlineData("1qaz2wsx3edc")]
    [InlineData("correct horse battery staple")]
    [InlineData("Ana123456789")]
    [InlineData("AnaAna!!2026")]
    [InlineData("quinceyard2026")]
    [InlineData("Quince Yard Studio Ana")]
    public void Problem_TriedFirst_Refused(string? passphrase) => Assert.NotNull(PassphraseRules.Problem(passphrase, "Ana", "Quince Yard Studio"));

    [Fact]
    public void Problem_AtTheEnds_TwelveAndOneHundredAndTwentyEightWillDo()
    {
        var longest = string.Concat(Enumerable.Repeat("kettle rope fern lamp! ", 6))[..PassphraseRules.Longest];
        var mixed = string.Concat(longest.AsSpan(0, 127), "z");
        Assert.Null(PassphraseRules.Problem(mixed));
        Assert.NotNull(PassphraseRules.Problem(mixed + "z"));
        Assert.Null(PassphraseRules.Problem("kettle rope!"));
        Assert.NotNull(PassphraseRules.Problem("kettle rope"));
    }
}
