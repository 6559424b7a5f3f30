using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Fields;

namespace MakerStudio.Web.Curing;

/// <summary>The choices of a re-smell, as they are read.</summary>
public static class CheckWords
{
    public static IReadOnlyList<Choice<int?>> Strengths { get; } = [.. Enumerable.Range(0, 6).Select(n => new Choice<int?>(n, n.ToString(System.Globalization.CultureInfo.InvariantCulture)))];

    public static IReadOnlyList<Choice<Clarity?>> Clarities { get; } =
        [.. Enum.GetValues<Clarity>().Select(c => new Choice<Clarity?>(c, Clarity(c)))];

    public static IReadOnlyList<Choice<CheckVerdict?>> Verdicts { get; } =
        [new(CheckVerdict.Passed, "passed"), new(CheckVerdict.RestLonger, "rest longer"), new(CheckVerdict.Hold, "hold")];

    public static string Clarity(Clarity clarity) => clarity switch
    {
        Services.Inventory.Clarity.Clear => "clear",
        Services.Inventory.Clarity.Haze => "haze",
        Services.Inventory.Clarity.Sediment => "sediment",
        _ => "does not apply",
    };

    /// <summary>What follows from a verdict at this moment, before it is pressed.</summary>
    public static string? Follows(CheckVerdict? verdict, CureRow row, string dueNear) => verdict switch
    {
        CheckVerdict.Passed when row.AsOf >= row.DueAt => "Its minimum is reached, so a passed check makes it ready, with your initials.",
        CheckVerdict.Passed => $"Counts from {dueNear}, when its minimum is reached.",
        CheckVerdict.RestLonger => "It stays on the shelf and asks again; nothing else changes.",
        CheckVerdict.Hold => "It cannot be filled until a check passes. Say below what you saw.",
        _ => null,
    };
}
