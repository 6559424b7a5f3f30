using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Tests.Materials;

/// <summary>
/// Registry numbers as suppliers' sheets print them. Rule of the check digit: CAS, "Check Digit Verification of CAS
/// Registry Numbers", whose own worked example is 107-07-3.
/// </summary>
public class CasNumberTests
{
    [Theory]
    [InlineData("107-07-3")] // the example of the published rule
    [InlineData("64-17-5")] // ethanol
    [InlineData("25265-71-8")] // dipropylene glycol
    [InlineData("120-51-4")] // benzyl benzoate
    [InlineData("7732-18-5")] // water
    [InlineData("78-70-6")] // linalool
    public void TryParse_RegistryNumber_IsTaken(string text)
    {
        Assert.True(CasNumber.TryParse(text, out var number, out _));
        Assert.Equal(text, number.Text);
    }

    [Theory]
    [InlineData("64-17-6", "should end in 5")]
    [InlineData("25256-71-8", "should end in")]
    [InlineData("120-15-4", "should end in")]
    public void TryParse_MistypedDigit_SaysWhichEndingWouldAgree(string text, string says)
    {
        Assert.False(CasNumber.TryParse(text, out _, out var why));
        Assert.Contains(says, why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(" 64-17-5 ", "64-17-5")]
    [InlineData("64\u201117\u20115", "64-17-5")]
    [InlineData("25265\u221271\u22128", "25265-71-8")]
    public void TryParse_PastedWithOtherDashes_ReadsTheSame(string text, string expected)
    {
        Assert.True(CasNumber.TryParse(text, out var number, out _));
        Assert.Equal(expected, number.Text);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("64175")]
    [InlineData("64-17")]
    [InlineData("6-17-5")]
    [InlineData("12345678-17-5")]
    [InlineData("64-17-5-1")]
    [InlineData("06-17-5")]
    [InlineData("\uFF16\uFF14-17-5")]
    [InlineData("' OR 1=1--")]
    [InlineData("\0")]
    public void TryParse_OtherText_IsAskedForThreeParts(string? text)
    {
        Assert.False(CasNumber.TryParse(text, out _, out var why));
        Assert.Contains("three parts", why, StringComparison.Ordinal);
    }

    /// <summary>The rule catches every single wrong digit whose place is not a multiple of 10 or paired with 2 or 5.</summary>
    [Fact]
    public void TryParse_EveryWrongLastDigit_IsRefused()
    {
        var taken = Enumerable.Range(0, 10).Where(last => CasNumber.TryParse($"120-51-{last}", out _, out _));
        Assert.Equal([4], taken);
    }
}
