namespace MakerStudio.Web.Today;

internal static class Words
{
    /// <summary>What the page is called at this hour of the studio's day.</summary>
    public static string PartOfDay(DateTimeOffset local) => local.Hour switch
    {
        < 5 => "Tonight",
        < 12 => "This morning",
        < 17 => "This afternoon",
        _ => "This evening",
    };

    /// <summary>How long ago, in words for a margin: "2 days ago", "3 h ago"; null within the hour.</summary>
    public static string? Ago(TimeSpan since) =>
        since.TotalHours < 1 ? null
        : since.TotalDays < 2 ? $"{(int)since.TotalHours} h ago"
        : $"{(int)since.TotalDays} days ago";
}
