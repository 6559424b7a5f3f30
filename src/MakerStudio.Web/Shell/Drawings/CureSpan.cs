using System.Globalization;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>The stretch of time a shelf shows; all cure lines under one axis share it.</summary>
public sealed record CureSpan(DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>Share of the span, by elapsed time; what lies outside stands on its ends.</summary>
    public double Share(DateTimeOffset at) => Math.Clamp((at - From) / (To - From), 0, 1);

    public string Percent(DateTimeOffset at) => Css(Share(at) * 100);

    public string Width(DateTimeOffset start, DateTimeOffset end) => Css(Math.Max(0, Share(end) - Share(start)) * 100);

    public bool Holds(DateTimeOffset at) => at >= From && at <= To;

    private static string Css(double percent) => percent.ToString("0.###", CultureInfo.InvariantCulture) + "%";
}

/// <summary>What one cure line draws. Instants; the line knows elapsed time only.</summary>
public sealed record CureTimes(DateTimeOffset Started, DateTimeOffset Min, DateTimeOffset? Ideal = null, DateTimeOffset? Latest = null, bool Held = false);
