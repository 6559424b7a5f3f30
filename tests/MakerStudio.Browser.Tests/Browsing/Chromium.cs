using Microsoft.Playwright;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>The one browser of this test process; every person has a context of their own in it.</summary>
internal static class Chromium
{
    private const string Variable = "STUDIO_CHROMIUM";
    private const string UsualPath = "/usr/bin/chromium";

    /// <summary>Two busy cores may take long over a page.</summary>
    public const float PatienceMilliseconds = 30_000;

    private static readonly Lazy<Task<IBrowser>> Started = new(StartAsync);

    public static Task<IBrowser> GetAsync() => Started.Value;

    private static async Task<IBrowser> StartAsync()
    {
        var path = Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given ? given : UsualPath;
        Assert.True(File.Exists(path), $"No Chromium at {path}. Install it (Debian: chromium) or name it in {Variable}.");
        Assertions.SetDefaultExpectTimeout(PatienceMilliseconds);
        var playwright = await Playwright.CreateAsync();
        return await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Headless = true,
            Args =
            [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }
}
