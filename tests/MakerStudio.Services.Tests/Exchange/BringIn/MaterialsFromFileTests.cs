using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

public class MaterialsFromFileTests
{
    private const string Header = "Material,Kind,CAS,Stocked in,Density (g/mL),Density at (°C),Alcohol,Alcohol is,Flash point (°C),Suppliers,Supplier codes,Lead times (days),Packs,Required papers,Notes,Least they sell (g or each),In whole packs of (g or each)\n";

    [Fact]
    public async Task BringIn_EveryColumn_IsKept()
    {
        await using var studio = await TestStudio.NewAsync();

        var taken = await studio.BringInAsync(BringInKind.Materials, Header
            + "Ethanol 99.5 % vol,Solvent,64-17-5,g,0.792,20,99.5,% vol,13,Still & Beaker | Alder Supply,E-99 |,5 | 14,25 L can | 5 L,SDS,\"Two lines,\nand a comma\",500 | 0.5,| 2.5\n"
            + "Bottle 100 mL,bottle or jar,,each,,,,,,Pennel,,,,,\n");

        Assert.Equal((BringInKind.Materials, "2 materials", 0), (taken.Kind, taken.BroughtIn, taken.Skipped));
        var forms = await studio.Get<Materials>().FormsAsync();
        var (bottle, ethanol) = (forms[0], forms[1]);
        Assert.Equal(
            ("Ethanol 99.5 % vol", MaterialKind.Solvent, "64-17-5", StockUnit.Gram, 0.792m, 20m, 99.5m, AlcoholBasis.PercentVolume, 13m, "Two lines,\nand a comma"),
            (ethanol.Name, ethanol.Kind!.Value, ethanol.Cas, ethanol.StockedIn, ethanol.Density!.Value, ethanol.DensityAtCelsius!.Value, ethanol.AlcoholValue!.Value, ethanol.AlcoholBasis!.Value, ethanol.FlashPointCelsius!.Value, ethanol.Notes));
        Assert.Equal([("Alder Supply", null, 14m, "5 L"), ("Still & Beaker", "E-99", 5m, "25 L can")], ethanol.Suppliers.Select(s => (s.Name!, s.Code, s.LeadTimeDays!.Value, s.PackNote!)));
        Assert.Equal([(0.5m, 2.5m), (500m, null)], ethanol.Suppliers.Select(s => (s.Minimum!.Value, s.Pack)));
        Assert.Equal([PaperKind.Sds], ethanol.RequiredPapers);
        Assert.Equal((MaterialKind.Bottle, StockUnit.Each), (bottle.Kind!.Value, bottle.StockedIn));
        await using var db = studio.Db();
        Assert.Contains(await db.Acts.Select(a => a.What).ToListAsync(), w => w == "Brought in 2 materials from the file from before.csv");
    }

    /// <summary>As a German spreadsheet saves it: semicolons, decimal commas, columns in another order, one that nobody knows.</summary>
    [Fact]
    public async Task BringIn_SemicolonsAndDecimalCommas_ReadTheSame()
    {
        await using var studio = await TestStudio.NewAsync();

        var seen = await studio.LookAsync(BringInKind.Materials, "kind;colour;NAME;density;flash point (°C)\nFragrance oil;brown;Feigenöl;0,98;-5,5\nSolvent;;DPG;1,023;\n");
        (await studio.TakeAsync(seen)).Expect();

        Assert.Equal(["colour"], seen.NotRead);
        Assert.Null(seen.Asks); // 1,023 could be a thousand and more; 0,98 and -5,5 show which mark the file has
        Assert.Equal("No temperature stands beside the density: taken at 20 °C.", seen.Rows[0].Note);
        var forms = await studio.Get<Materials>().FormsAsync();
        Assert.Equal([("DPG", 1.023m), ("Feigenöl", 0.98m)], forms.Select(f => (f.Name!, f.Density!.Value)));
        Assert.Equal(-5.5m, forms[1].FlashPointCelsius);
        Assert.Equal(MaterialKinds.DefaultPapers(MaterialKind.FragranceOil), forms[1].RequiredPapers);
    }

    [Fact]
    public async Task Preview_NumberThatCouldBeTwo_AsksAndIsNotGuessed()
    {
        await using var studio = await TestStudio.NewAsync();
        const string Text = "Material,Kind,Density (g/mL),Reorder point (g or each)\nDPG,Solvent,1.023,\"2,500\"\n";

        var seen = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Density (g/mL)\nDPG,Solvent,1.023\n");
        Assert.Equal(new MarkAsked(2, "Density (g/mL)", "1.023"), seen.Asks);
        Assert.Contains("could be read in two ways", seen.WhyRefused(), StringComparison.Ordinal);
        Assert.IsType<RowsRefused>((await studio.TakeAsync(seen)).Refusal);
        Assert.StartsWith("Density (g/mL): A density lies between", (await studio.Get<BroughtFiles>().PreviewAsync(seen.FileId, ','))!.WhyRefused(), StringComparison.Ordinal); // a thousand and more

        var listed = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Suppliers,Least they sell\nDPG,Solvent,Alder | Pennel,2 | 1.500\n");
        Assert.Equal(new MarkAsked(2, "Least they sell (g or each)", "1.500"), listed.Asks);

        var both = await studio.LookAsync(BringInKind.Materials, Text, '.');
        (await studio.TakeAsync(both, ".")).Expect();

        var form = Assert.Single(await studio.Get<Materials>().FormsAsync());
        Assert.Equal((1.023m, 2500m), (form.Density!.Value, form.ReorderPoint!.Value));
    }

    [Theory]
    [InlineData("Fig oil,Fragrance oil,,,98,20,,,,,,,,,", "Density (g/mL): A density lies between")]
    [InlineData("Fig oil,Perfume,,,,,,,,,,,,,", "Kind: “Perfume” is none of: Fragrance oil, ")]
    [InlineData(",Solvent,,,,,,,,,,,,,", "Material: A material needs a name.")]
    [InlineData("Fig oil,Fragrance oil,64-17-6,,,,,,,,,,,,", "CAS: ")]
    [InlineData("Fig oil,Fragrance oil,,,0.98 g/mL,20,,,,,,,,,", "Density (g/mL): “0.98 g/mL” cannot be taken.")]
    [InlineData("Fig oil,Fragrance oil,,,=1+1,20,,,,,,,,,", "Density (g/mL): “=1+1” cannot be taken.")]
    [InlineData("Fig oil,Fragrance oil,,,0.98,20,90,,,,,,,,", "Alcohol is: Is this % vol, % by weight or US proof?")]
    [InlineData("Fig oil,Fragrance oil,,,0.98,20,90,proof,,,,,,,", "Alcohol is: “proof” is none of: % vol, % by weight, US proof.")]
    [InlineData("Fig oil,Fragrance oil,,,0.98,20,,,,Alder,A-1 | B-2,,,,", "Supplier codes: There is more here than suppliers in their column.")]
    [InlineData("Fig oil,Fragrance oil,,,0.98,20,,,,Alder,,soon,,,", "Lead times (days): “soon” cannot be taken.")]
    [InlineData("Fig oil,Fragrance oil,,,0.98,20,,,,,,,,MSDS,", "Required papers: “MSDS” is none of: SDS, ")]
    [InlineData("Fig oil,Fragrance oil,,kg,0.98,20,,,,,,,,,", "Stocked in: “kg” is none of: g, each.")]
    [InlineData("Fig\u202Eoil,Fragrance oil,,,0.98,20,,,,,,,,,", "Material: The name holds a hidden character")]
    public async Task Preview_OneFault_IsSaidAtItsColumn(string row, string why)
    {
        await using var studio = await TestStudio.NewAsync();

        var seen = await studio.LookAsync(BringInKind.Materials, Header + "Good,Solvent,,,0.9,20,,,,,,,,,\n" + row + "\n");

        Assert.StartsWith(why, seen.WhyRefused(), StringComparison.Ordinal);
        Assert.Equal((1, 0, 1), (seen.New, seen.Skipped, seen.Refused));
        var refused = Assert.IsType<RowsRefused>((await studio.TakeAsync(seen)).Refusal);
        Assert.Equal((1, 2, 3L), (refused.Refused, refused.Lines, refused.FirstLine));
        Assert.Empty(await studio.Get<Materials>().FormsAsync());
    }

    [Fact]
    public async Task Preview_NameTwiceInTheFile_RefusesTheSecondAndSaysWhereTheFirstIs()
    {
        await using var studio = await TestStudio.NewAsync();

        var seen = await studio.LookAsync(BringInKind.Materials, "Material,Kind\nDPG,Solvent\n\ndpg ,Fixative\n");

        Assert.Equal("Material: This name stands on line 2 too. Keep one row of it.", seen.WhyRefused());
        Assert.Equal(4, seen.Rows.Single(r => r.Fate == RowFate.Refused).Line);
    }

    [Fact]
    public async Task Preview_MaterialThatIsHere_IsSkippedWhenTheSameAndRefusedWhenNot()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.BringInAsync(BringInKind.Materials, "Material,Kind,Density (g/mL),Density at (°C)\nFig oil,Fragrance oil,0.98,20\nDPG,Solvent,1.0231,20\n");

        var same = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Density (g/mL)\nfig oil,Fragrance oil,0.98\nCedar oil,Essential oil,\n");
        Assert.Equal([RowFate.Skipped, RowFate.New], same.Rows.Select(r => r.Fate));
        Assert.Equal("It is here already, just so.", same.Rows[0].Why);
        Assert.Equal(("1 material", 1), ((await studio.TakeAsync(same)).Expect().BroughtIn, same.Skipped));

        var other = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Density (g/mL),Notes\nDPG,Solvent,1.03,fine\n");
        Assert.Equal(
            "Material: It is here already, with density 1.0231 g/mL at 20 °C and not 1.03 g/mL at 20 °C, notes not stated and not fine. Change it on its own page, or take this row out.",
            other.WhyRefused());

        var all = await studio.LookAsync(BringInKind.Materials, "Material,Kind\nDPG,Solvent\n");
        Assert.Equal("Every row of this file is here already, or has nothing left.", Assert.IsType<Because>((await studio.TakeAsync(all)).Refusal).Happened);
    }

    /// <summary>The starts are those of CWE-1236. What was typed is kept as text, and no file that goes out runs it.</summary>
    [Theory]
    [InlineData("=cmd()")]
    [InlineData("+SUM(A1)")]
    [InlineData("@now")]
    [InlineData("-2+3")]
    public async Task BringIn_CellThatASpreadsheetWouldRun_IsTextInAndMarkedOut(string hostile)
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.BringInAsync(BringInKind.Materials, $"Material,Kind,Notes\n{hostile},Solvent,'{hostile}\n");

        var form = Assert.Single(await studio.Get<Materials>().FormsAsync());
        Assert.Equal((hostile, hostile), (form.Name, form.Notes));

        var refused = await studio.LookAsync(BringInKind.Materials, $"Material,Kind,{hostile}\n{hostile} two,Nothing,{hostile}\n");
        var lines = (await studio.RefusedAsync(refused.FileId)).Split('\n');
        Assert.Equal($"Material,Kind,'{hostile},Line in the file,Refused because", lines[0]);
        Assert.StartsWith($"'{hostile} two,Nothing,'{hostile},2,Kind: ", lines[1].Replace("\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
