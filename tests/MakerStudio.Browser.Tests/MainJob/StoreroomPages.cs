using System.Text;
using MakerStudio.Browser.Tests.Browsing;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.MainJob;

/// <summary>A line as the invoice says it; empty text is left out.</summary>
internal sealed record InvoiceLine(string Material, string Quantity, string Unit, string Price, string Gross, string Duty = "", string Surcharge = "");

/// <summary>Materials and deliveries, typed as the papers have them.</summary>
internal static class StoreroomPages
{
    public static async Task AddFragranceAsync(this Visitor visitor, string name, string supplier)
    {
        var page = visitor.Page;
        await visitor.GoAsync("/storeroom/materials/new");
        await page.EnterAsync("Name", name);
        await page.GetByLabel("Kind").SelectOptionAsync("Fragrance oil");
        await page.EnterAsync("Density", "0.98");
        await Expect(page.GetByLabel("at a temperature of")).ToHaveValueAsync("20");
        await page.EnterAsync("Flash point", "82");
        foreach (var paper in new[] { "SDS", "fragrance certificate" })
        {
            await page.GetByRole(AriaRole.Checkbox, new() { Name = paper }).UncheckAsync();
        }

        await page.Button("Add a supplier").ClickAsync();
        await page.EnterAsync("Supplier", supplier);
        await page.EnterAsync("Lead time", "10");
        await page.Button("Add this material").ClickAsync();
        await Expect(page.Heading(name)).ToBeVisibleAsync();
    }

    /// <summary>Types an invoice with freight shared by weight and posts it.</summary>
    public static async Task ReceiveAsync(this Visitor visitor, string supplier, string freight, string total, params InvoiceLine[] lines)
    {
        var page = visitor.Page;
        await visitor.GoAsync("/storeroom/receive");
        await page.WaitForURLAsync("**/storeroom/receive/*-*");
        await page.ReadyAsync();
        await page.GetByLabel("Supplier", new() { Exact = true }).SelectOptionAsync(supplier);
        await page.EnterAsync("Invoice", "A-1044");
        await page.GetByLabel("Received").FillAsync("2026-10-24");
        await page.EnterAsync("Freight", freight);
        await page.EnterAsync("Invoice total", total);
        await Expect(page.GetByRole(AriaRole.Radio, new() { Name = "weight", Exact = true })).ToBeCheckedAsync();
        for (var number = 1; number <= lines.Length; number++)
        {
            await TypeLineAsync(page, number, lines[number - 1]);
        }
    }

    /// <summary>Files the certificate of analysis of a lot in quarantine and releases it: scenario S2.</summary>
    public static async Task ReleaseAsync(this Visitor visitor, string lot)
    {
        var page = visitor.Page;
        await visitor.GoAsync($"/storeroom/lots/{lot}");
        await Expect(page.Locator("main")).ToContainTextAsync("Missing: CoA");
        await page.GetByLabel("File", new() { Exact = true }).SetInputFilesAsync(new FilePayload
        {
            Name = "coa.txt", MimeType = "text/plain", Buffer = Encoding.UTF8.GetBytes("Certificate of analysis, refractive index 1.482 at 20 °C"),
        });
        await page.Button("File this paper").ClickAsync();
        await page.Button($"Release {lot}").ClickAsync();
        await Expect(page.Button("Back to quarantine…")).ToBeVisibleAsync();
    }

    private static async Task TypeLineAsync(IPage page, int number, InvoiceLine typed)
    {
        var line = page.GetByRole(AriaRole.Group, new() { Name = $"Line {number}", Exact = true });
        if (await line.CountAsync() == 0)
        {
            await page.Button("Add a line").ClickAsync();
        }

        await line.PickAsync($"Line {number}, material", typed.Material);
        await line.GetByLabel("Unit").SelectOptionAsync(typed.Unit);
        await line.EnterAsync("As invoiced", typed.Quantity);
        await line.EnterAsync("Price of the line", typed.Price);
        await line.EnterAsync("Gross weight", typed.Gross);
        if (typed.Duty.Length + typed.Surcharge.Length > 0)
        {
            await line.GetByText("Supplier’s lot, dates, duty").ClickAsync();
            await line.EnterAsync("Duty", typed.Duty);
            await line.EnterAsync("Surcharge", typed.Surcharge);
        }
    }
}
