using System.Globalization;
using System.Text.RegularExpressions;
using Bunit;
using MakerStudio.Web.Shell;
using MudBlazor;

namespace MakerStudio.Web.Tests.Shell;

public sealed partial class StudioThemeTests : ShellContext
{
    [Fact]
    public void Sheet_EveryPaletteVariableMudBlazorWrites_IsPointedAtOurTokens()
    {
        var written = Render<MudThemeProvider>(p => p.Add(t => t.Theme, StudioTheme.ForMud)).Markup;
        var theirs = PaletteNames().Matches(written).Select(m => m.Value).ToHashSet();
        Assert.True(theirs.Count > 60, "MudBlazor wrote no palette; the test would prove nothing.");

        // Opacities and the dark sheet over a page are no colours of ours.
        string[] leftToMud = ["--mud-palette-overlay-dark", "--mud-palette-overlay-light", "--mud-palette-border-opacity"];
        var missing = theirs.Except(leftToMud).Where(name => !StudioTheme.Sheet.Contains("  " + name + ":", StringComparison.Ordinal));

        Assert.Empty(missing);
    }

    [Fact]
    public void Sheet_EveryVariableItReads_IsDefinedInBothThemes()
    {
        var read = VarNames().Matches(StudioTheme.Sheet).Select(m => m.Groups[1].Value).Distinct();

        Assert.All(read, name => Assert.Equal(3, Regex.Count(StudioTheme.Sheet, $@"^  {name}: ", RegexOptions.Multiline)));
    }

    public static TheoryData<string> Themes => ["light", "dark"];

    [Theory, MemberData(nameof(Themes))]
    public void Tokens_TextOnGroundAndSheet_KeepsWcagContrastOfText(string theme)
    {
        var t = theme == "light" ? StudioTokens.Light : StudioTokens.Dark;
        string[] texts = [t.Ink, t.Ink2, t.Ink3, t.Fig, t.FigPress, t.Leaf, t.Rest, t.Amber, t.Madder];

        Assert.All(texts, text => Assert.True(Math.Min(Contrast(text, t.Ground), Contrast(text, t.Sheet)) >= 4.5, text));
        Assert.True(Contrast(t.OnFig, t.Fig) >= 4.5);
        Assert.True(Contrast(t.OnQuince, t.Quince) >= 4.5);
    }

    [Theory, MemberData(nameof(Themes))]
    public void Tokens_WordsOnTheirWash_KeepWcagContrastOfText(string theme)
    {
        var t = theme == "light" ? StudioTokens.Light : StudioTokens.Dark;
        (string Word, string Wash)[] pairs =
            [(t.Leaf, t.LeafWash), (t.Rest, t.RestWash), (t.Amber, t.AmberWash), (t.Madder, t.MadderWash), (t.Ink2, t.FigWash)];

        Assert.All(pairs, p => Assert.True(Contrast(p.Word, p.Wash) >= 4.5, p.Wash));
    }

    [Theory, MemberData(nameof(Themes))]
    public void Tokens_EdgesAndSeries_KeepWcagContrastOfDrawings(string theme)
    {
        var t = theme == "light" ? StudioTokens.Light : StudioTokens.Dark;
        string[] drawn = [t.Edge, t.Fragrance, t.Ethanol, t.Fixative, t.Packaging, t.Labour, t.Overhead];

        Assert.All(drawn, colour => Assert.True(Contrast(colour, t.Ground) >= 3.0, colour));
    }

    [Fact]
    public void Contrast_BlackOnWhite_IsTwentyOne() => Assert.Equal(21.0, Contrast("#000000", "#FFFFFF"), 6);

    /// <summary>Contrast ratio as WCAG 2.1 defines it under "contrast ratio" and "relative luminance".</summary>
    private static double Contrast(string a, string b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string hex)
    {
        double[] rgb = [.. Enumerable.Range(0, 3).Select(i => Linear(int.Parse(hex.AsSpan(1 + (2 * i), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0))];
        return (0.2126 * rgb[0]) + (0.7152 * rgb[1]) + (0.0722 * rgb[2]);
    }

    private static double Linear(double c) => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);

    [GeneratedRegex("--mud-palette-[a-z-]+(?=:)")]
    private static partial Regex PaletteNames();

    [GeneratedRegex(@"var\((--[a-z0-9-]+)\)")]
    private static partial Regex VarNames();
}
