using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>What people do on the pages, by the words and roles they find there.</summary>
internal static class Pages
{
    /// <summary>Signs in on the sign-in page and waits for Today.</summary>
    public static async Task SignInAsync(this IPage page, string name, string passphrase)
    {
        await page.FillSignInAsync(name, passphrase);
        await page.WaitForURLAsync("**/");
        await page.ReadyAsync();
    }

    public static async Task FillSignInAsync(this IPage page, string name, string passphrase)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
        await page.GetByLabel("Passphrase").FillAsync(passphrase);
        await page.Button("Come in").ClickAsync();
    }

    public static ILocator Button(this IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public static ILocator Link(this IPage page, string name) => page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true });

    /// <summary>The page's title, by a part of its words.</summary>
    public static ILocator Heading(this IPage page, string words) => page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = words });

    /// <summary>What a form answers when it did nothing; said aloud at once.</summary>
    public static ILocator Refusal(this IPage page) => page.Locator(".note.bad[role=alert]");

    /// <summary>The studio's name at the top, the way to Today.</summary>
    public static ILocator Strip(this IPage page, string studio) => page.Locator("header").GetByRole(AriaRole.Link, new() { Name = studio });

    public static async Task SetUpAsync(this IPage page, string studio, string person, string initials, string passphrase)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(studio);
        await page.GetByLabel("First person, you").FillAsync(person);
        await page.GetByLabel("Initials").FillAsync(initials);
        await page.GetByLabel("Passphrase").FillAsync(passphrase);
        await page.Button("Open the studio").ClickAsync();
    }

    /// <summary>Invites a maker on the Studio page.</summary>
    /// <returns>The link that is shown once.</returns>
    public static async Task<string> InviteAsync(this IPage page, string name)
    {
        await page.GotoAsync("/studio");
        await page.ReadyAsync();
        await page.FormWith("Invite").GetByLabel("Name").FillAsync(name);
        await page.Button("Invite").ClickAsync();
        var link = page.Locator(".once");
        await Expect(link).ToContainTextAsync("/join?token=");
        return await link.InnerTextAsync();
    }

    public static async Task JoinAsync(this IPage page, string initials, string passphrase)
    {
        await page.GetByLabel("Initials").FillAsync(initials);
        await page.GetByLabel("Passphrase").FillAsync(passphrase);
        await page.Button("Join the studio").ClickAsync();
        await page.WaitForURLAsync("**/");
        await page.ReadyAsync();
    }

    private static ILocator FormWith(this IPage page, string button) =>
        page.Locator("form").Filter(new() { Has = page.Button(button) });

    /// <summary>Types into a field and leaves it, as a change counts from then on.</summary>
    public static async Task EnterAsync(this IPage page, string label, string text, ILocator? inside = null) =>
        await (inside ?? page.Locator("body")).EnterAsync(label, text);

    public static async Task EnterAsync(this ILocator inside, string label, string text)
    {
        var field = inside.GetByLabel(label, new() { Exact = true }).And(inside.Page.Locator("input, textarea"));
        await field.FillAsync(text);
        await field.BlurAsync();
    }

    /// <summary>Finds by typing and takes with the keyboard, as at a list of suggestions.</summary>
    public static async Task PickAsync(this ILocator inside, string label, string name)
    {
        var field = inside.GetByRole(AriaRole.Combobox, new() { Name = label });
        await field.FillAsync(name);
        var found = inside.GetByRole(AriaRole.Option, new() { Name = name }).First;
        await found.WaitForAsync();
        while (await found.GetAttributeAsync("aria-selected") != "true")
        {
            await field.PressAsync("ArrowDown");
            await Expect(inside.Locator("[role=option][aria-selected=true]")).ToHaveCountAsync(1);
        }

        await field.PressAsync("Enter");
    }
}
