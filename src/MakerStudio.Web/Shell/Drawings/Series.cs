namespace MakerStudio.Web.Shell.Drawings;

/// <summary>What a length stands for. Each has its colour and its hatch, the same on every drawing.</summary>
public enum Series
{
    Fragrance, Ethanol, Fixative, Packaging, Labour, Overhead, Waiting,
    Quantity, Warning,
}

public static class SeriesFill
{
    /// <summary>An svg fill; the hatches stand in HatchDefs.</summary>
    public static string Of(Series series) => series switch
    {
        Series.Fragrance => "url(#h-frag)",
        Series.Ethanol => "url(#h-alc)",
        Series.Fixative => "url(#h-fix)",
        Series.Packaging => "url(#h-pack)",
        Series.Labour => "url(#h-lab)",
        Series.Overhead => "url(#h-over)",
        Series.Waiting => "url(#h-wait)",
        Series.Warning => "var(--amber)",
        _ => "var(--ink-2)",
    };
}
