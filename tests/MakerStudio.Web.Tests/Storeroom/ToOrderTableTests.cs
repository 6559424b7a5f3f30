using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Storeroom;
using MakerStudio.Web.Tests.Shell;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class ToOrderTableTests : ShellContext
{
    private static readonly DateOnly Today = new(2026, 10, 26);
    private static readonly BuyingTerms Alder = new(Guid.CreateVersion7(), "Alder Supply", null, 10, null, null);

    [Fact]
    public void Rows_DueLaterAndUnknown_StandInTheirGroups()
    {
        var table = Show(Row("Fig", 50, 10m, Alder), Row("Linen", 800, 10m, Alder), Row("Accord", 5, 1m, null));

        Assert.Equal(["Alder Supply", "Later", "In use, lead time not known"], table.FindAll("tr.grp").Select(g => g.TextContent.Split("Begin")[0].Trim()));
        Assert.Equal(["Fig", "Linen", "Accord"], table.FindAll("tbody td:first-child a").Select(a => a.TextContent));
        // 10 days and 60 more at 10 g a day, less the 50 g that are there.
        Assert.Contains("650.0", table.FindAll("tbody tr")[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Begin_Pressed_AsksForTheSupplierOfTheGroup()
    {
        BuyingTerms? asked = null;
        var table = Render<ToOrderTable>(p => p.Add(t => t.Rows, [new ToOrderRow(Row("Fig", 50, 10m, Alder), null, null)]).Add(t => t.OnOrder, from => asked = from));

        table.Find("tr.grp button").Click();

        Assert.Equal(Alder.SupplierId, asked!.SupplierId);
    }

    [Fact]
    public void Rows_ThatLastLong_AreShownWhenAskedFor()
    {
        var table = Show(Row("Fig", 50, 10m, Alder), Row("Dye", 9_000, 10m, Alder));
        Assert.DoesNotContain("Dye", table.Markup, StringComparison.Ordinal);

        table.FindAll("button").Single(b => b.TextContent.Contains("Show the 1 that last longer", StringComparison.Ordinal)).Click();

        Assert.Contains("Dye", table.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Row_OnItsWay_NamesTheOrderAndIsNotDue()
    {
        var row = Row("Fig", 50, 10m, Alder) with { OnItsWay = new OnItsWay(650_000, new DateOnly(2026, 11, 3), ["O-4"]) };

        var table = Show(row);

        Assert.Contains("on Order O-4, expected 3 Nov", table.Markup, StringComparison.Ordinal);
        Assert.Empty(table.FindAll("tr.grp button"));
    }

    private IRenderedComponent<ToOrderTable> Show(params StockRow[] rows) =>
        Render<ToOrderTable>(p => p.Add(t => t.Rows, rows.Select(r => new ToOrderRow(r, null, null)).ToList()));

    private static StockRow Row(string name, long grams, decimal usePerDay, BuyingTerms? from) => new(
        Guid.CreateVersion7(), name, MaterialKind.FragranceOil, StockUnit.Gram, grams * 1000, 0, 0, 0, 0, usePerDay, from?.LeadDays, null, null, false, Today, [])
        { From = from };
}
