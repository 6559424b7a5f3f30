using MakerStudio.Browser.Tests.Browsing;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.MainJob;

/// <summary>Writing a formula and releasing it.</summary>
internal static class LibraryPages
{
    public static async Task StartFormulaAsync(this Visitor visitor, string name, string kind)
    {
        await visitor.GoAsync("/library/new");
        await visitor.Page.EnterAsync("Name", name);
        await visitor.Page.GetByLabel("Made as").SelectOptionAsync(new SelectOptionValue { Label = kind });
        await visitor.Page.Button("Start the draft").ClickAsync();
        await Expect(visitor.Page.Heading("v1")).ToBeVisibleAsync();
    }

    /// <summary>Adds lines in order of addition, typed as % of total by weight.</summary>
    public static async Task TypeLinesAsync(this Visitor visitor, params (string Material, string Percent)[] lines)
    {
        var page = visitor.Page;
        foreach (var (material, _) in lines)
        {
            await page.Locator("main").PickAsync("Add a material", material);
            await page.Button("Add it").ClickAsync();
            await Expect(page.GetByLabel($"{material}, ")).ToBeVisibleAsync();
        }

        await page.GetByRole(AriaRole.Radio, new() { Name = "% by weight" }).CheckAsync();
        foreach (var (material, percent) in lines)
        {
            await page.EnterAsync($"{material}, % by weight", percent);
        }

        await Expect(page.GetByText($"{lines.Length} lines add up to 100.00 % by weight.")).ToBeVisibleAsync();
    }

    public static async Task MeasureDensityAsync(this Visitor visitor, string gramsPerMillilitre)
    {
        await visitor.Page.GetByText("Nothing is measured yet").ClickAsync();
        await visitor.Page.EnterAsync("Density at 20 °C", gramsPerMillilitre);
        await visitor.Page.Button("Keep what was measured").ClickAsync();
        await Expect(visitor.Page.GetByText($"Measured: {gramsPerMillilitre} g/mL")).ToBeVisibleAsync();
    }

    public static async Task AddSizeAsync(this Visitor visitor, string name, string nominal, string overfill, params string[] packaging)
    {
        var page = visitor.Page;
        await page.GetByText("Add a size").ClickAsync();
        await page.EnterAsync("Name", name, inside: page.Locator("form").Filter(new() { Has = page.Button("Add the size") }));
        await page.EnterAsync("Nominal content", nominal);
        await page.EnterAsync("Overfill", overfill);
        foreach (var part in packaging)
        {
            await page.GetByRole(AriaRole.Checkbox, new() { Name = part }).CheckAsync();
        }

        await page.Button("Add the size").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Cell, new() { Name = name, Exact = true })).ToBeVisibleAsync();
    }

    public static async Task ReleaseAsync(this Visitor visitor, int version)
    {
        await visitor.Page.Button($"Release v{version}…").ClickAsync();
        await visitor.Page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = $"Release v{version}" }).ClickAsync();
        await visitor.Page.WaitForURLAsync($"**/v/{version}");
        await Expect(visitor.Page.GetByText("frozen").First).ToBeVisibleAsync();
    }
}
