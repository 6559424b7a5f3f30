using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>What people do on the pages, by the words and roles they find there.</summary>
internal static class Pages
{
    public static async Task SignInAsync(this IPage page, string name, string passphrase)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await page.GetByLabel("Passphrase").FillAsync(passphrase);
        await page.Button("Come in").ClickAsync();
        await Expect(page.Heading("Today")).ToBeVisibleAsync();
        await page.ReadyAsync();
    }

    public static ILocator Button(this IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public static ILocator Link(this IPage page, string name) => page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true });

    /// <summary>The page's title, by a part of its words.</summary>
    public static ILocator Heading(this IPage page, string words) => page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = words });
}
