using MakerStudio.Browser.Tests.Browsing;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Bench;

/// <summary>The weigh sheet in somebody's hand.</summary>
internal sealed class Sheet(Visitor visitor)
{
    private IPage Page => visitor.Page;

    public ILocator Reading => Page.GetByLabel("Reading of");

    /// <summary>What the sheet says while readings wait to be sent.</summary>
    public ILocator Banner => Page.Locator("[data-kept]");

    public static async Task<Sheet> OpenAsync(Visitor visitor, string code)
    {
        await visitor.GoAsync($"/bench/{code}/weigh");
        return new Sheet(visitor);
    }

    /// <summary>Presses the sheet's own digits with a thumb.</summary>
    public async Task PressAsync(string digits)
    {
        foreach (var digit in digits)
        {
            await Page.Button($"{digit}").TapAsync();
        }

        await Expect(Reading).ToHaveValueAsync(digits);
    }

    public Task RecordAsync(string grams) => Page.Button($"Record {grams} g").TapAsync();

    public async Task WeighAsync(string digits, string? grams = null)
    {
        await PressAsync(digits);
        await RecordAsync(grams ?? digits);
    }

    public Task AnswerAsync(string title) => Page.Locator("[data-ask]").GetByRole(AriaRole.Button, new() { Name = title }).First.TapAsync();

    /// <summary>Answers with a reason, as the record asks for one.</summary>
    public async Task AnswerAsync(string title, string reason)
    {
        await AnswerAsync(title);
        await Page.GetByLabel("Reason, for the record").FillAsync(reason);
        await Page.Locator("[data-ask] form").GetByRole(AriaRole.Button).TapAsync();
    }

    public async Task TakeLotAsync(string code)
    {
        await Page.Locator(".wline:visible").GetByRole(AriaRole.Button, new() { Name = "Other lot" }).TapAsync();
        await Page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Button, new() { Name = code }).TapAsync();
    }

    public Task IsAtAsync(string material) => Expect(Page.Heading(material)).ToBeVisibleAsync();

    public async Task ConfirmLastAdditionAsync(string place)
    {
        await Page.GetByLabel("Stirred and closed").CheckAsync();
        await Page.GetByLabel("Where it rests").FillAsync(place);
        await Page.Button("Confirm last addition").TapAsync();
    }
}
