using Bunit;
using MakerStudio.Web.Shell.Parts;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;

namespace MakerStudio.Web.Tests.Shell;

public sealed class QuestionTests : ShellContext
{
    private static readonly QuestionText Hold = new("Put P-2 on hold?", "49 units here are blocked at once.", "Hold P-2 and 49 units", Reason: "Why, in your words", Danger: true);

    [Fact]
    public async Task Asked_LeftAsItIs_AnswersNo()
    {
        var (page, answer) = await AskAsync(Hold);

        page.Find(".btn.q").Click();

        Assert.False((await answer).Chosen);
    }

    [Fact]
    public async Task Asked_ReasonMissing_StaysOpenAndSaysSo()
    {
        var (page, answer) = await AskAsync(Hold);

        page.Find(".btn.d").Click();
        page.WaitForAssertion(() => Assert.Contains("needs a reason", page.Find(".err").TextContent, StringComparison.Ordinal));
        Assert.False(answer.IsCompleted);

        page.Find("input").Change("Supplier notice of 26 Oct");
        page.Find(".btn.d").Click();

        Assert.Equal(new Answer(true, "Supplier notice of 26 Oct"), await answer);
    }

    [Fact]
    public async Task Asked_QuietChoice_ComesFirstAndHasTheFocus()
    {
        var (page, _) = await AskAsync(Hold);

        Assert.Equal("Leave as it is", page.FindAll(".question .acts button")[0].TextContent);
        Assert.Contains(JSInterop.Invocations, i => i.Identifier == "Blazor._internal.domWrapper.focus");
        Assert.Equal("dialog", page.Find(".question").GetAttribute("role"));
        Assert.Equal("Put P-2 on hold?", page.Find(".question").GetAttribute("aria-label"));
    }

    private async Task<(IRenderedComponent<MudDialogProvider> Page, Task<Answer> Answer)> AskAsync(QuestionText question)
    {
        var page = Render<MudDialogProvider>();
        Task<Answer> answer = Task.FromResult(Answer.Left);
        await page.InvokeAsync(() => { answer = Services.GetRequiredService<IDialogService>().AskAsync(question); });
        page.WaitForElement(".question");
        return (page, answer);
    }
}
