using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using MudBlazor;

namespace MakerStudio.Web.Shell;

/// <summary>
/// The one place that turns tokens into what is drawn: the CSS variables our stylesheet reads, and the theme
/// MudBlazor reads. The sheet also points MudBlazor's own variables at our tokens, so its parts change with
/// <c>data-theme</c> before the first paint, without a circuit.
/// </summary>
public static class StudioTheme
{
    /// <summary>Pixels.</summary>
    public const int BodyText = 15, HeadText = 30, MarginText = 16, SmallText = 13;

    private const string Sans =
        "\"Atkinson Hyperlegible Next\", system-ui, \"Segoe UI\", \"Noto Sans\", sans-serif";

    private const string ScentFace = "\"Petrona\", Georgia, \"Noto Serif\", serif";

    private static readonly string[] SansFamily =
        ["Atkinson Hyperlegible Next", "system-ui", "Segoe UI", "Noto Sans", "sans-serif"];

    /// <summary>What MudBlazor is told. Ripple and shadow are switched off per control in its defaults.</summary>
    public static MudTheme ForMud { get; } = new()
    {
        PaletteLight = Fill(new PaletteLight(), StudioTokens.Light),
        PaletteDark = Fill(new PaletteDark(), StudioTokens.Dark),
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "3px", AppbarHeight = "100px" },
        Typography = Type(),
    };

    /// <summary>The theme as a stylesheet; served at <see cref="SheetPath"/>.</summary>
    public static string Sheet { get; } = WriteSheet();

    /// <summary>Address with the content's own mark, so browsers may keep it for good.</summary>
    public static string SheetPath { get; } =
        "/theme.css?v=" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Sheet)))[..10];

    private static T Fill<T>(T palette, StudioTokens token) where T : Palette
    {
        palette.Primary = token.Fig;
        palette.PrimaryContrastText = token.OnFig;
        palette.PrimaryDarken = token.FigPress;
        palette.PrimaryLighten = token.FigWash;
        palette.Secondary = token.Ink2;
        palette.SecondaryContrastText = token.Ground;
        palette.Tertiary = token.Quince;
        palette.TertiaryContrastText = token.OnQuince;
        palette.Success = token.Leaf;
        palette.Info = token.Rest;
        palette.Warning = token.Amber;
        palette.Error = token.Madder;
        palette.SuccessContrastText = palette.InfoContrastText = token.Ground;
        palette.WarningContrastText = palette.ErrorContrastText = token.Ground;
        palette.Dark = palette.Black = token.Ink;
        palette.Background = palette.AppbarBackground = palette.DrawerBackground = token.Ground;
        palette.BackgroundGray = token.Sunk;
        palette.Surface = token.Sheet;
        palette.TextPrimary = palette.AppbarText = palette.DrawerText = token.Ink;
        palette.TextSecondary = palette.DrawerIcon = palette.ActionDefault = token.Ink2;
        palette.TextDisabled = palette.ActionDisabled = token.Ink3;
        palette.ActionDisabledBackground = palette.TableStriped = token.Ground;
        palette.LinesDefault = palette.TableLines = palette.Divider = palette.DividerLight = token.Feint;
        palette.LinesInputs = token.Edge;
        palette.TableHover = token.FigWash;
        palette.HoverOpacity = 0.04;
        palette.RippleOpacity = 0;
        return palette;
    }

    private static Typography Type() => new()
    {
        Default = new DefaultTypography { FontFamily = SansFamily, FontSize = Px(BodyText), LineHeight = "1.4667" },
        Body1 = new Body1Typography { FontFamily = SansFamily, FontSize = Px(BodyText), LineHeight = "1.4667" },
        Body2 = new Body2Typography { FontFamily = SansFamily, FontSize = Px(BodyText), LineHeight = "1.4667" },
        H1 = new H1Typography { FontFamily = SansFamily, FontSize = Px(HeadText), FontWeight = "650", LineHeight = "1.2" },
        H2 = new H2Typography { FontFamily = SansFamily, FontSize = Px(MarginText), FontWeight = "650", LineHeight = "1.375" },
        H6 = new H6Typography { FontFamily = SansFamily, FontSize = "19px", FontWeight = "650", LineHeight = "1.3158" },
        Caption = new CaptionTypography { FontFamily = SansFamily, FontSize = Px(SmallText), LineHeight = "1.3846" },
        Button = new ButtonTypography { FontFamily = SansFamily, FontSize = Px(BodyText), FontWeight = "600", TextTransform = "none" },
    };

    private static string Px(int size) => size.ToString(CultureInfo.InvariantCulture) + "px";

    private static string WriteSheet()
    {
        var sheet = new StringBuilder();
        Block(sheet, ":root", "light", StudioTokens.Light);
        Block(sheet, ":root[data-theme=dark]", "dark", StudioTokens.Dark);
        sheet.Append("@media (prefers-color-scheme: dark) {\n");
        Block(sheet, ":root:not([data-theme])", "dark", StudioTokens.Dark);
        sheet.Append("}\n:root {\n");
        sheet.Append("  --sans: ").Append(Sans).Append(";\n  --name: ").Append(ScentFace).Append(";\n");
        sheet.Append("  --r1: 3px; --r2: 10px;\n}\nhtml:root {\n");
        foreach (var (mud, token) in MudNames)
        {
            sheet.Append("  --mud-palette-").Append(mud).Append(": var(--").Append(token).Append(");\n");
        }

        return sheet.Append("}\n").ToString();
    }

    private static void Block(StringBuilder sheet, string selector, string scheme, StudioTokens tokens)
    {
        sheet.Append(selector).Append(" {\n  color-scheme: ").Append(scheme).Append(";\n");
        foreach (var (name, value) in tokens.Named())
        {
            sheet.Append("  --").Append(name).Append(": ").Append(value).Append(";\n");
            if (value.Length == 7)
            {
                sheet.Append("  --").Append(name).Append("-rgb: ").Append(Rgb(value)).Append(";\n");
            }
        }

        sheet.Append("}\n");
    }

    private static string Rgb(string hex)
    {
        var bytes = Convert.FromHexString(hex[1..]);
        return string.Join(',', bytes.Select(b => b.ToString(CultureInfo.InvariantCulture)));
    }

    /// <summary>MudBlazor's palette variables and the token each follows; StudioThemeTests fails when one is missing.</summary>
    private static KeyValuePair<string, string>[] MudNames =>
    [
        new("black", "ink"), new("white", "sheet"),
        .. Family("primary", "fig", "on-fig", "fig-press", "fig-wash"),
        .. Family("secondary", "ink-2", "ground", "ink", "ink-3"),
        .. Family("tertiary", "quince", "on-quince", "quince", "quince"),
        .. Family("info", "rest", "ground", "rest", "rest-wash"),
        .. Family("success", "leaf", "ground", "leaf", "leaf-wash"),
        .. Family("warning", "amber", "ground", "amber", "amber-wash"),
        .. Family("error", "madder", "ground", "madder", "madder-wash"),
        .. Family("dark", "ink", "ground", "ink", "ink-2"),
        new("text-primary", "ink"), new("text-primary-rgb", "ink-rgb"),
        new("text-secondary", "ink-2"), new("text-secondary-rgb", "ink-2-rgb"),
        new("text-disabled", "ink-3"), new("text-disabled-rgb", "ink-3-rgb"),
        new("action-default", "ink-2"), new("action-default-hover", "fig-wash"),
        new("action-disabled", "ink-3"), new("action-disabled-background", "ground"),
        new("surface", "sheet"), new("surface-rgb", "sheet-rgb"),
        new("background", "ground"), new("background-gray", "sunk"),
        new("drawer-background", "ground"), new("drawer-text", "ink"), new("drawer-icon", "ink-2"),
        new("appbar-background", "ground"), new("appbar-text", "ink"),
        new("lines-default", "feint"), new("lines-inputs", "edge"),
        new("table-lines", "feint"), new("table-striped", "ground"), new("table-hover", "fig-wash"),
        new("divider", "feint"), new("divider-rgb", "feint-rgb"), new("divider-light", "feint"),
        new("skeleton", "sunk"),
        new("gray-default", "ink-3"), new("gray-light", "edge"), new("gray-lighter", "feint"),
        new("gray-dark", "ink-2"), new("gray-darker", "ink"),
    ];

    private static KeyValuePair<string, string>[] Family(string mud, string token, string text, string darken, string lighten) =>
    [
        new(mud, token), new(mud + "-rgb", token + "-rgb"), new(mud + "-text", text),
        new(mud + "-darken", darken), new(mud + "-lighten", lighten), new(mud + "-hover", "fig-wash"),
    ];
}
