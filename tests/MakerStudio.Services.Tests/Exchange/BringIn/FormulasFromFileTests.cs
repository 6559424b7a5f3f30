using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Formulation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

public class FormulasFromFileTests
{
    private const string Header = "Formula,Made as,Line,Material,Amount (empty is the rest),Counted in,Note,Shortest rest (h),Ideal rest (h),Expected loss (%),Method,Version\n";
    private const string Spray = "\"Room spray, alcohol\"";

    private static async Task<TestStudio> StudioAsync()
    {
        var studio = await TestStudio.NewAsync();
        await studio.MaterialAsync("Fig oil", MaterialKind.FragranceOil, density: 0.98m);
        await studio.MaterialAsync("Ethanol", MaterialKind.Solvent, density: 0.79m);
        await studio.MaterialAsync("Bottle", MaterialKind.Bottle, Core.Quantities.StockUnit.Each);
        return studio;
    }

    [Fact]
    public async Task BringIn_RowsOfTwoFormulas_MakesADraftOfEach()
    {
        await using var studio = await StudioAsync();

        var taken = await studio.BringInAsync(BringInKind.Formulas, Header
            + $"Fig,{Spray},2,Ethanol,,% by weight,,24,72,2.5,\"Stir.\nRest.\",v3\nFig,{Spray},1,fig oil,12.5,% w/w,Slowly,,,,,v3\nHearth,Pre-blend,,Fig oil,3,parts by weight,,,,,,\nHearth,Pre-blend,,Ethanol,1,parts by weight,,,,,,\n");

        Assert.Equal("2 formulas as drafts", taken.BroughtIn);
        var lines = await studio.Get<Formulas>().LinesAsync();
        Assert.Equal(
            [("Fig", 1, "Fig oil", 12.5m, LineBasis.PercentByWeight, "Slowly"), ("Fig", 2, "Ethanol", null, LineBasis.PercentByWeight, null),
             ("Hearth", 1, "Fig oil", 3m, LineBasis.PartsByWeight, null), ("Hearth", 2, "Ethanol", 1m, LineBasis.PartsByWeight, null)],
            lines.Select(l => (l.Formula, l.Position, l.Material, l.Amount, l.Basis, l.Note)));
        Assert.All(lines, l => Assert.Equal((1, FormulaState.Draft), (l.Number, l.State)));
        Assert.Equal(("Stir.\nRest.", 24, 72, 2.5m), (lines[0].Method, lines[0].CureMinHours, lines[0].CureIdealHours, lines[0].ExpectedLossPercent));
        Assert.Equal(0.125m, lines[0].Fraction);
        await using var db = studio.Db();
        Assert.Equal(MaterialKind.PreBlend, (await db.Materials.SingleAsync(m => m.Name == "Hearth")).Kind);
    }

    [Fact]
    public async Task BringIn_FormulaThatHoldsAPreBlendOfTheSameFile_FindsIt()
    {
        await using var studio = await StudioAsync();

        await studio.BringInAsync(BringInKind.Formulas, Header + $"Fig,{Spray},,Hearth,12.5,% by weight,,,,,,\nFig,{Spray},,Ethanol,,% by weight,,,,,,\nHearth,pre-blend,,Fig oil,3,parts by weight,,,,,,\n");

        Assert.Equal(["Hearth", "Ethanol", "Fig oil"], (await studio.Get<Formulas>().LinesAsync()).Select(l => l.Material));
        await using var db = studio.Db();
        Assert.Equal(1, await db.Materials.CountAsync(m => m.Name == "Hearth"));
    }

    [Theory]
    [InlineData("Fig,Room spray,,Fig oil,5,g,,,,,,", "Made as: “Room spray” is none of: Room spray, alcohol; ")]
    [InlineData(",Sachet,,Fig oil,5,g,,,,,,", "Formula: No formula is named.")]
    [InlineData("Fig,Pre-blend,,Plum oil,5,g,,,,,,", "Material: There is no material “Plum oil” in the storeroom. Bring the materials in first.")]
    [InlineData("Fig,Pre-blend,,Bottle,5,g,,,,,,", "Material: Bottle is counted in pieces here, so no formula can hold it.")]
    [InlineData("Fig,Pre-blend,,Fig oil,five,g,,,,,,", "Amount (empty is the rest): “five” cannot be taken.")]
    [InlineData("Fig,Pre-blend,,Fig oil,5,%,,,,,,", "Counted in: Per cent of what? Write one of: % w/w, % v/v, % of wax.")]
    [InlineData("Fig,Pre-blend,,Fig oil,5,handful,,,,,,", "Counted in: “handful” is none of: parts by weight, ")]
    [InlineData("Fig,Pre-blend,,Fig oil,5,,,,,,,", "Counted in: Say what the amount is counted in.")]
    [InlineData("Fig,Pre-blend,1.5,Fig oil,5,g,,,,,,", "Line: “1.5” cannot be taken. Type a whole number here.")]
    [InlineData("Fig,Pre-blend,,Fig oil,5,g,,72,24,,,", "Ideal rest (h): The ideal rest is not shorter than the shortest")]
    [InlineData("Fig,Pre-blend,,Fig oil,5,g,,,,60,,", "Expected loss (%): The expected loss is from 0 to 50 %.")]
    public async Task Preview_OneFault_IsSaidAtItsColumn(string row, string why)
    {
        await using var studio = await StudioAsync();

        var seen = await studio.LookAsync(BringInKind.Formulas, Header + $"Good,{Spray},,Ethanol,7.5,g,,,,,,\n" + row + "\n");

        Assert.StartsWith(why, seen.WhyRefused(), StringComparison.Ordinal);
        Assert.IsType<RowsRefused>((await studio.TakeAsync(seen)).Refusal);
        Assert.Empty(await studio.Get<Formulas>().LinesAsync());
    }

    [Fact]
    public async Task Preview_RowsOfAFormulaThatDisagree_AreSaid()
    {
        await using var studio = await StudioAsync();

        var seen = await studio.LookAsync(BringInKind.Formulas, Header
            + "Fig,Pre-blend,1,Fig oil,5.5,g,,24,,,,v1\nFig,Pre-blend,1,Ethanol,5.5,g,,48,,,,v2\nFig,Pre-blend,,Ethanol,5.5,g,,,,,,v1\n");

        Assert.Equal(
            [
                null,
                "Line: Line 2 has this place in the formula too. Version: The rows of this formula are of v1 and v2. Keep those of one. Shortest rest (h): Line 2 says otherwise of this formula.",
                "Line: Other rows of this formula say their place, this one does not.",
            ],
            seen.Rows.Select(r => r.Why));
    }

    [Fact]
    public async Task Preview_FormulaThatIsHere_IsSkippedWhenTheSameAndRefusedWhenNot()
    {
        await using var studio = await StudioAsync();
        const string Fig = "Fig,Pre-blend,1,Fig oil,5.5,g,,,,,,\nFig,Pre-blend,2,Ethanol,4.5,g,,,,,,\n";
        await studio.BringInAsync(BringInKind.Formulas, Header + Fig);

        var seen = await studio.LookAsync(BringInKind.Formulas, Header + Fig + $"Fig,{Spray},,Ethanol,4.5,g,,,,,,\n");
        Assert.Equal([RowFate.Skipped, RowFate.Skipped, RowFate.New], seen.Rows.Select(r => r.Fate));

        var other = await studio.LookAsync(BringInKind.Formulas, Header + Fig.Replace("4.5", "4.6", StringComparison.Ordinal));
        Assert.Equal("Formula: There is already a pre-blend called Fig, with other lines. Give this one a name of its own, or take its rows out.", other.WhyRefused());
    }
}
