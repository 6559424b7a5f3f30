namespace MakerStudio.Web.Shell.Drawings;

/// <summary>A value on a day.</summary>
/// <param name="Value">In the unit of the rule at the left.</param>
/// <param name="Series">Whose it is, by name: each has a shape of its own.</param>
/// <param name="IsEstimate">Drawn as an empty dashed ring, whoever's it is.</param>
/// <param name="IsAlone">No line leads to it from the point before.</param>
public sealed record DayPoint(DateOnly On, decimal Value, string Series, bool IsEstimate = false, bool IsAlone = false);

/// <summary>A level across the drawing, with its words.</summary>
public sealed record DayLevel(decimal Value, string Label);

/// <summary>The shapes points are told apart by, in this order; colour only helps.</summary>
internal static class PointShapes
{
    /// <summary>Around 0 0, some 11 px wide.</summary>
    private static readonly (string Path, string Fill)[] All =
    [
        ("M-5.5 0A5.5 5.5 0 1 1 5.5 0A5.5 5.5 0 1 1 -5.5 0Z", "var(--m-frag)"),
        ("M-5 -5H5V5H-5Z", "var(--ground)"),
        ("M0 -7L7 0L0 7L-7 0Z", "var(--m-alc)"),
        ("M0 -6.5L6.5 5H-6.5Z", "var(--ground)"),
        ("M0 6.5L6.5 -5H-6.5Z", "var(--m-lab)"),
        ("M-6 -2H-2V-6H2V-2H6V2H2V6H-2V2H-6Z", "var(--m-fix)"),
        ("M-6 0L-3 -5.2H3L6 0L3 5.2H-3Z", "var(--ground)"),
    ];

    public static (string Path, string Fill) Of(int series) => All[series % All.Length];

    /// <summary>How the line of a series is broken, as an svg dash array; the first is whole.</summary>
    public static string? Dash(int series) => (series % 4) switch { 1 => "7 4", 2 => "2 3", 3 => "10 3 2 3", _ => null };

    public const string Estimate = "M-5.5 0A5.5 5.5 0 1 1 5.5 0A5.5 5.5 0 1 1 -5.5 0Z";
}
