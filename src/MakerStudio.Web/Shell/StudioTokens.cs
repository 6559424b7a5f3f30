namespace MakerStudio.Web.Shell;

/// <summary>
/// The colours of one theme, as six-digit hex. Text tokens keep a WCAG contrast of 4.5 or more on
/// <see cref="Ground"/> and <see cref="Sheet"/>, edges and drawings 3 or more; StudioThemeTests measures them.
/// </summary>
public sealed record StudioTokens
{
    public required string Ground { get; init; }
    public required string Sheet { get; init; }
    public required string Sunk { get; init; }
    public required string Ink { get; init; }
    public required string Ink2 { get; init; }
    public required string Ink3 { get; init; }
    public required string Feint { get; init; }
    public required string Edge { get; init; }
    public required string Margin { get; init; }
    public required string Fig { get; init; }
    public required string FigPress { get; init; }
    public required string OnFig { get; init; }
    public required string FigWash { get; init; }
    public required string Quince { get; init; }
    public required string OnQuince { get; init; }
    public required string Leaf { get; init; }
    public required string Rest { get; init; }
    public required string Amber { get; init; }
    public required string Madder { get; init; }
    public required string LeafWash { get; init; }
    public required string RestWash { get; init; }
    public required string AmberWash { get; init; }
    public required string MadderWash { get; init; }

    /// <summary>Material series; each also has its own hatch (HatchDefs), so colour never stands alone.</summary>
    public required string Fragrance { get; init; }
    public required string Ethanol { get; init; }
    public required string Fixative { get; init; }
    public required string Packaging { get; init; }
    public required string Labour { get; init; }
    public required string Overhead { get; init; }

    /// <summary>Shadow of a question or a menu, the only raised things.</summary>
    public required string Lift { get; init; }

    public static StudioTokens Light { get; } = new()
    {
        Ground = "#F6F8F8", Sheet = "#FFFFFF", Sunk = "#EAEFEF",
        Ink = "#1C1722", Ink2 = "#4A4453", Ink3 = "#625B6C",
        Feint = "#CFDBDD", Edge = "#747E86", Margin = "#D59BBE",
        Fig = "#69235A", FigPress = "#4F1743", OnFig = "#FFFFFF", FigWash = "#F3E6EF",
        Quince = "#F5D34E", OnQuince = "#1C1722",
        Leaf = "#1C6839", Rest = "#28587F", Amber = "#8A4800", Madder = "#A3182B",
        LeafWash = "#E2F0E6", RestWash = "#E3EDF5", AmberWash = "#FBEBD9", MadderWash = "#FBE6E6",
        Fragrance = "#8F2F72", Ethanol = "#3F7FA6", Fixative = "#A77A12",
        Packaging = "#5B6770", Labour = "#3C7D55", Overhead = "#87919A",
        Lift = "0 1px 0 #CFDBDD, 0 10px 30px rgba(28, 23, 34, .16)",
    };

    public static StudioTokens Dark { get; } = new()
    {
        Ground = "#16131A", Sheet = "#1F1B25", Sunk = "#100D13",
        Ink = "#ECE8F0", Ink2 = "#BFB7C9", Ink3 = "#A29AAE",
        Feint = "#37313F", Edge = "#8A8196", Margin = "#7A4667",
        Fig = "#E9A9D3", FigPress = "#F4CBE5", OnFig = "#2B0F24", FigWash = "#33202E",
        Quince = "#F2CE55", OnQuince = "#1C1722",
        Leaf = "#83D09D", Rest = "#8DC0EA", Amber = "#F2B36C", Madder = "#FF9C9C",
        LeafWash = "#1A2C20", RestWash = "#1A2733", AmberWash = "#33261A", MadderWash = "#381D20",
        Fragrance = "#D77DB9", Ethanol = "#7DB6DA", Fixative = "#DDB155",
        Packaging = "#98A5AF", Labour = "#7CC095", Overhead = "#6F7883",
        Lift = "0 0 0 1px #37313F, 0 12px 32px rgba(0, 0, 0, .5)",
    };

    /// <summary>Every token under the name the stylesheet reads it by, in reading order.</summary>
    public IEnumerable<KeyValuePair<string, string>> Named() =>
    [
        new("ground", Ground), new("sheet", Sheet), new("sunk", Sunk),
        new("ink", Ink), new("ink-2", Ink2), new("ink-3", Ink3),
        new("feint", Feint), new("edge", Edge), new("margin", Margin),
        new("fig", Fig), new("fig-press", FigPress), new("on-fig", OnFig), new("fig-wash", FigWash),
        new("quince", Quince), new("on-quince", OnQuince),
        new("leaf", Leaf), new("rest", Rest), new("amber", Amber), new("madder", Madder),
        new("leaf-wash", LeafWash), new("rest-wash", RestWash),
        new("amber-wash", AmberWash), new("madder-wash", MadderWash),
        new("m-frag", Fragrance), new("m-alc", Ethanol), new("m-fix", Fixative),
        new("m-pack", Packaging), new("m-lab", Labour), new("m-over", Overhead),
        new("lift", Lift),
    ];
}
