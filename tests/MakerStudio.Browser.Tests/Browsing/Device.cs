using Microsoft.Playwright;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>What somebody looks at the studio with.</summary>
public sealed record Device(int Width, int Height, bool Touch = false, ColorScheme Scheme = ColorScheme.Light)
{
    public static readonly Device Desk = new(1280, 800);
    public static readonly Device DeskAtNight = Desk with { Scheme = ColorScheme.Dark };

    /// <summary>A common phone, upright.</summary>
    public static readonly Device Phone = new(390, 844, Touch: true);

    /// <summary>Widths, CSS px, at which no page may scroll sideways.</summary>
    public static readonly IReadOnlyList<int> Widths = [320, 390, 768, 1024, 1280];

    internal BrowserNewContextOptions Options(Uri address, string? signIn) => new()
    {
        BaseURL = address.ToString(), ViewportSize = new() { Width = Width, Height = Height }, HasTouch = Touch, IsMobile = Touch,
        ColorScheme = Scheme, ReducedMotion = ReducedMotion.Reduce, Locale = "en-IE", TimezoneId = "Europe/Berlin", StorageState = signIn,
    };
}
