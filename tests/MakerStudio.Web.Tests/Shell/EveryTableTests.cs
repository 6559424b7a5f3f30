using System.Text.RegularExpressions;

namespace MakerStudio.Web.Tests.Shell;

/// <summary>
/// Every table that a page can ever show offers itself as a file, those too that stand there only after something was
/// typed or went wrong. That the file holds what the table shows is tried in the browser tests.
/// </summary>
public sealed partial class EveryTableTests
{
    /// <summary>Parts whose table is not saved, each with the reason.</summary>
    private static readonly Dictionary<string, string> NotSaved = new()
    {
        ["Bench/LastAddition.razor"] = "on the scale, with wet hands; the batch's record has every weighing",
        ["Bench/WeighPaper.razor"] = "printed with empty boxes to weigh by hand; the page of the plan saves the same lines",
        ["Finished/PackagingUse.razor"] = "what a filling would use up, as it is typed; the batch's cost has it once recorded",
        ["Finished/Selling/ImportPage.razor"] = "a look at somebody's file before it is recorded; its rejected lines have a file of their own",
        ["Library/FormulaFromFile.razor"] = "a look at a file before it is brought in",
        ["Library/Workbench/StaleNote.razor"] = "two drafts of one formula, until one is chosen",
        ["Shell/Files/BringInRows.razor"] = "a look at a file before it is brought in; its refused lines have a file of their own",
        ["Shell/Specimen/SpecimenWords.razor"] = "for builders",
        ["Storeroom/Materials/MaterialBoth.razor"] = "two people's answers in one form, until one is chosen",
        ["Storeroom/Materials/Safety/CompositionPaste.razor"] = "lines pasted into a form",
        ["Storeroom/Materials/Safety/SafetyBoth.razor"] = "two people's answers in one form, until one is chosen",
        ["Storeroom/Receive/DeliverySums.razor"] = "an invoice as it is typed; the posted delivery has its lines",
        ["Storeroom/Receive/FreightShares.razor"] = "an invoice as it is typed; the posted delivery has its lines",
    };

    [Fact]
    public void Table_OfAnyPage_OffersItselfAsAFileRightBelow()
    {
        var without = Parts().Where(part => UnsavedIn(part.Text) > 0).Select(part => part.Path).ToList();
        Assert.Equal([], without.Except(NotSaved.Keys));
        Assert.Equal([], NotSaved.Keys.Except(without));
    }

    [Theory]
    [InlineData("<table></table>", 1)]
    [InlineData("<table></table>\n<SaveAs Path=\"/x\" />", 0)]
    [InlineData("<table></table>\n  @if (Kept is { } kept) {<SaveAs Path=\"/x\" />}", 0)]
    [InlineData("<table></table><p>…</p><SaveAs Path=\"/x\" />", 1)]
    [InlineData("<table></table><SaveAs Path=\"/x\" /><table></table>", 1)]
    public void UnsavedIn_CountsTablesWithoutAFile(string part, int unsaved) => Assert.Equal(unsaved, UnsavedIn(part));

    private static int UnsavedIn(string part) => Ends().Count(part) - Saved().Count(part);

    private static IEnumerable<(string Path, string Text)> Parts()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "MakerStudio.sln")))
        {
            folder = folder.Parent;
        }

        var web = Path.Combine(folder!.FullName, "src", "MakerStudio.Web");
        return Directory.EnumerateFiles(web, "*.razor", SearchOption.AllDirectories).Select(file => (Path.GetRelativePath(web, file).Replace('\\', '/'), File.ReadAllText(file)))
            .Where(part => part.Item2.Contains("<table", StringComparison.Ordinal));
    }

    [GeneratedRegex("</table>")]
    private static partial Regex Ends();

    [GeneratedRegex(@"</table>\s*(@if \([^\n]*\) \{)?<SaveAs ")]
    private static partial Regex Saved();
}
