using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Finding;

public class FinderTests
{
    [Theory]
    [InlineData("P-1")]
    [InlineData("p1")]
    [InlineData(" p - 1 ")]
    public async Task Find_ACodeHoweverTyped_IsThatLot(string typed)
    {
        await using var studio = await ShelfAsync();
        var found = Assert.Single((await studio.Get<Finder>().FindAsync(typed)).Found);
        Assert.Equal((FindingKind.Lot, "P-1", "Fig fragrance oil"), (found.Kind, found.Name, found.About));
    }

    [Fact]
    public async Task Find_LetterOInACode_IsReadAsZero()
    {
        await using var studio = await ShelfAsync();
        Assert.Equal("P-10", Assert.Single((await studio.Get<Finder>().FindAsync("P-1O")).Found).Name);
    }

    [Fact]
    public async Task Find_ACodeThatIsNotThere_NamesTheNearest()
    {
        await using var studio = await ShelfAsync();
        var findings = await studio.Get<Finder>().FindAsync("P-11");
        Assert.Empty(findings.Found);
        Assert.Equal("P-1", findings.Nearest[0].Name);
    }

    [Fact]
    public async Task Find_PartOfAName_FindsMaterialsAndFormulas()
    {
        await using var studio = await ShelfAsync();
        var found = (await studio.Get<Finder>().FindAsync("fig")).Found;
        Assert.Contains(found, f => f is { Kind: FindingKind.Formula, Name: "Fig" });
        Assert.Contains(found, f => f is { Kind: FindingKind.Material, Name: "Fig fragrance oil" });
    }

    [Theory]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("\\")]
    [InlineData("' OR 1=1--")]
    [InlineData("\0")]
    [InlineData("\ud800")]
    [InlineData("(((((((((((((((((((((a+)+)+)+)+)+)+$")]
    public async Task Find_HostileText_FindsNothing(string typed)
    {
        await using var studio = await ShelfAsync();
        var findings = await studio.Get<Finder>().FindAsync(typed);
        Assert.DoesNotContain(findings.Found, f => f.Kind == FindingKind.Lot);
    }

    private static async Task<TestStudio> ShelfAsync()
    {
        var studio = await TestStudio.NewAsync();
        var fig = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.LotAsync(fig, "P-1", 100m, 0.07m);
        await studio.LotAsync(fig, "P-10", 100m, 0.07m);
        await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (fig, 100m));
        return studio;
    }
}
