using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

/// <summary>The studio's clock stands at 26 Oct 2026; it writes day before month.</summary>
public class LotsFromFileTests
{
    private const string Header = "Lot,Material,Amount,Unit,Landed (EUR per kg or each),Received,State,Why,Opened,Expires,Retest,Supplier,Supplier lot,Density (g/mL),Tare (g),Shelf\n";

    private static async Task<TestStudio> StudioAsync()
    {
        var studio = await TestStudio.NewAsync();
        await studio.MaterialAsync("Fig oil", MaterialKind.FragranceOil, density: 0.98m);
        await studio.MaterialAsync("DPG", MaterialKind.Solvent);
        await studio.MaterialAsync("Bottle", MaterialKind.Bottle, Core.Quantities.StockUnit.Each);
        return studio;
    }

    [Fact]
    public async Task BringIn_LotsOfEveryUnit_StandOnTheShelfAndTheBooksHold()
    {
        await using var studio = await StudioAsync();

        var seen = await studio.LookAsync(BringInKind.Lots, Header
            + "P-7,Fig oil,1.25,kg,67.374,2026-09-01,Released,Smelled and passed,2026-09-02,2027-03-01,,Alder,L-4711,0.981,350.5,A2\n"
            + ",DPG,2 L,,11.20,13/10/2026,,,,,,Alder,,1.02,,\n"
            + ",Bottle,480,each,0.8648,2026-09-01,,,,,,,,,,\n");
        var taken = (await studio.TakeAsync(seen)).Expect();

        Assert.Equal("3 lots worth 522.17 EUR", taken.BroughtIn);
        var lots = (await studio.Get<Lots>().AllAsync()).ToDictionary(l => l.MaterialName);
        var fig = lots["Fig oil"];
        Assert.Equal(
            ("P-7", 1_250_000L, 0.067374m, LotStatus.Released, "Smelled and passed", "Alder", "L-4711", 0.981m, 350_500L, "A2"),
            (fig.Code, fig.OnHand, fig.UnitCost, fig.Status, fig.StatusReason, fig.Supplier, fig.SupplierLot, fig.Density!.Value, fig.TareMilligrams!.Value, fig.Shelf));
        Assert.Equal((new DateOnly(2026, 9, 1), new DateOnly(2026, 9, 2), new DateOnly(2027, 3, 1)), (fig.ReceivedOn, fig.OpenedOn, fig.ExpiresOn));
        Assert.Equal((2_040_000L, "E-1", new DateOnly(2026, 10, 13)), (lots["DPG"].OnHand, lots["DPG"].Code, lots["DPG"].ReceivedOn));
        Assert.Equal((480L, 0.8648m), (lots["Bottle"].OnHand, lots["Bottle"].UnitCost));
        Assert.Equal("Opening stock", (await studio.Get<Lots>().HistoryAsync(fig.Id))[0].What);

        var report = await studio.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, string.Join('\n', report.Differences));
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task BringIn_OpeningStock_IsReceivedValueThatCanBeTakenBack()
    {
        await using var studio = await StudioAsync();
        await studio.BringInAsync(BringInKind.Lots, "Material,Amount,Landed,Received\nDPG,\"1,000.5 g\",11.20,2026-09-01\n");

        var books = await studio.Get<Books>().ReadAsync();
        Assert.Equal(11.2056m, Math.Round(books.Parts.Received, 4));

        var lot = Assert.Single(await studio.Get<Lots>().AllAsync());
        var entry = (await studio.Get<Lots>().HistoryAsync(lot.Id))[0];
        Assert.True(entry.MayReverse);
        (await studio.Get<Lots>().ReverseAsync(studio.Ana, new ReverseMovement { MovementId = entry.MovementId!.Value, Reason = "Typed for another lot" })).Expect();
        Assert.Equal(0, (await studio.Get<Lots>().AllAsync())[0].OnHand);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Theory]
    [InlineData(",Plum oil,5,g,1,2026-09-01,,,,,,,,,,", "Material: There is no material “Plum oil” in the storeroom. Bring the materials in first.")]
    [InlineData(",DPG,,g,1,2026-09-01,,,,,,,,,,", "Amount: Say how much there is.")]
    [InlineData(",DPG,-5,g,1,2026-09-01,,,,,,,,,,", "Amount: What is on the shelf is above zero.")]
    [InlineData(",DPG,5,,1,2026-09-01,,,,,,,,,,", "Unit: Say the unit: g, kg, mL, L or each.")]
    [InlineData(",DPG,5,oz,1,2026-09-01,,,,,,,,,,", "Unit: “oz” is none of: kg, g, ")]
    [InlineData(",DPG,5 oz,,1,2026-09-01,,,,,,,,,,", "Amount: “5 oz” is not clear. Which ounce?")]
    [InlineData(",DPG,5 kg,g,1,2026-09-01,,,,,,,,,,", "Unit: The amount says kg, the unit says g. Keep one.")]
    [InlineData(",DPG,5,L,1,2026-09-01,,,,,,,,,,", "Amount: L of a material stocked in g needs its density")]
    [InlineData(",DPG,5,each,1,2026-09-01,,,,,,,,,,", "Amount: This material is stocked by mass.")]
    [InlineData(",DPG,0.0001,g,1,2026-09-01,,,,,,,,,,", "Amount: That is less than half a milligram")]
    [InlineData(",DPG,5.0006,g,1,2026-09-01,,,,,,,,,,", "Amount: Finer than a milligram cannot be recorded.")]
    [InlineData(",Bottle,5.5,each,1,2026-09-01,,,,,,,,,,", "Amount: Pieces are whole.")]
    [InlineData(",DPG,5,g,,2026-09-01,,,,,,,,,,", "Landed (EUR per kg or each): Say what it cost landed; 0 for what cost nothing.")]
    [InlineData(",DPG,5,g,-1.5,2026-09-01,,,,,,,,,,", "Landed (EUR per kg or each): “-1.5” cannot be taken.")]
    [InlineData(",DPG,5,g,1.5,,,,,,,,,,,", "Received: Give the day it came.")]
    [InlineData(",DPG,5,g,1.5,09/10/2026,,,,,,,,,,", "Received: “09/10/2026” could be two days. Write it as 2026-11-14.")]
    [InlineData(",DPG,5,g,1.5,10/13/2026,,,,,,,,,,", "Received: “10/13/2026” is not a day as this studio writes it.")]
    [InlineData(",DPG,5,g,1.5,2026-02-30,,,,,,,,,,", "Received: There is no day “2026-02-30”.")]
    [InlineData(",DPG,5,g,1.5,2026-10-27,,,,,,,,,,", "Received: 27 Oct 2026 is still to come.")]
    [InlineData(",DPG,5,g,1.5,2026-09-01,,,2026-08-01,,,,,,,", "Opened: It was opened before it came.")]
    [InlineData(",DPG,5,g,1.5,2026-09-01,Fine,,,,,,,,,", "State: “Fine” is none of: Quarantine, Released, On hold, Rejected.")]
    [InlineData(",DPG,5,g,1.5,2026-09-01,On hold,,,,,,,,,", "Why: Say why it is on hold.")]
    [InlineData(",DPG,5,g,1.5,2026-09-01,,,,,,,,98,,", "Density (g/mL): A density lies between")]
    [InlineData("P 7,DPG,5,g,1.5,2026-09-01,,,,,,,,,,", "Lot: A code has at most 20 letters")]
    public async Task Preview_OneFault_IsSaidAtItsColumn(string row, string why)
    {
        await using var studio = await StudioAsync();

        var seen = await studio.LookAsync(BringInKind.Lots, Header + ",DPG,7.5,g,1.5,2026-09-01,,,,,,,,,,\n" + row + "\n");

        Assert.StartsWith(why, seen.WhyRefused(), StringComparison.Ordinal);
        Assert.IsType<RowsRefused>((await studio.TakeAsync(seen)).Refusal);
        Assert.Empty(await studio.Get<Lots>().AllAsync());
    }

    [Fact]
    public async Task State_ReleasedWithoutPapers_NeedsItsGroundAndEmptyGoesByThePapers()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.BringInAsync(BringInKind.Materials, "Material,Kind\nFig oil,Fragrance oil\nWater,Water\n");
        const string Columns = "Lot,Material,Amount,Unit,Landed,Received,State,Why\n";

        var without = await studio.LookAsync(BringInKind.Lots, Columns + "P-1,Fig oil,50.5,g,60,2026-09-01,Released,\n");
        Assert.StartsWith("Why: It is without its SDS and fragrance certificate and CoA here.", without.WhyRefused(), StringComparison.Ordinal);

        await studio.BringInAsync(BringInKind.Lots, Columns + "P-1,Fig oil,50.5,g,60,2026-09-01,Released,Papers in the blue folder\nP-2,Fig oil,50.5,g,60,2026-09-01,,\nH-1,Water,50.5,g,0,2026-09-01,,\n");
        Assert.Equal(
            [("H-1", LotStatus.Released, "Papers complete"), ("P-1", LotStatus.Released, "Papers in the blue folder"), ("P-2", LotStatus.Quarantine, "SDS and fragrance certificate and CoA missing")],
            (await studio.Get<Lots>().AllAsync()).OrderBy(l => l.Code).Select(l => (l.Code, l.Status, l.StatusReason!)));
    }

    [Fact]
    public async Task Codes_OnTheJars_StayAndTheCountGoesOnAfterThem()
    {
        await using var studio = await StudioAsync();
        await studio.BringInAsync(BringInKind.Lots, "Lot,Material,Amount,Unit,Landed,Received\ne-12,DPG,5.5,g,1,2026-09-01\nJAR/3,DPG,5.5,g,1,2026-09-01\n");

        await studio.BringInAsync(BringInKind.Lots, "Material,Amount,Unit,Landed,Received\nDPG,6.5,g,1,2026-09-01\n");

        Assert.Equal(["E-12", "E-13", "JAR/3"], (await studio.Get<Lots>().AllAsync()).Select(l => l.Code).Order());
    }

    [Fact]
    public async Task Preview_LotsThatAreHereOrTwice_AreSaid()
    {
        await using var studio = await StudioAsync();
        const string Columns = "Lot,Material,Amount,Unit,Landed,Received,Supplier lot,State\n";
        var first = await studio.LookAsync(BringInKind.Lots, Columns + "P-1,Fig oil,5.5,g,1,2026-09-01,A,\n,DPG,5.5,g,1,2026-09-01,B,\n");
        (await studio.TakeAsync(first)).Expect();

        var seen = await studio.LookAsync(BringInKind.Lots, Columns
            + "P-1,Fig oil,9.5,g,1,2026-09-01,A,\nP-1,Fig oil,9.5,g,1,2026-09-01,A,\nE-1,Fig oil,5.5,g,1,2026-09-01,,\n,DPG,5.5,g,1,2026-09-01,B,\n,DPG,7.5,g,1,2026-09-01,,\n,DPG,7.5,g,1,2026-09-01,,\nD-5,Nothing at all,0,g,1,2026-09-01,,Used up\n");

        Assert.Equal(
            [
                "This lot is here already. Its ledger says what is left; count it where that is not right.",
                "Lot: This code stands on line 2 too. Each jar has its own.",
                "Lot: A lot of another material has this code. Give it another.",
                "Supplier lot: Lot B of this material is here as E-1. Take the row out, or give a second jar its own code.",
                null,
                "Lot: Line 6 says just the same. If there are two such jars, give each a code.",
                "Nothing is left of it, so there is nothing to bring in.",
            ],
            seen.Rows.Select(r => r.Why));

        Assert.Equal("This very file was brought in before.", Assert.IsType<Because>((await studio.TakeAsync(first)).Refusal).Happened);
    }

    [Fact]
    public async Task Landed_AsExactAsItWasWorkedOut_ComesBackWhole()
    {
        await using var studio = await StudioAsync();

        await studio.BringInAsync(BringInKind.Lots, "Material,Amount,Unit,Landed,Received\nDPG,5.5,g,67.374285714285714285714285714,2026-09-01\n");

        Assert.Equal(0.067374285714285714285714285714m, (await studio.Get<Lots>().AllAsync())[0].UnitCost);
        var tooFine = await studio.LookAsync(BringInKind.Lots, "Material,Amount,Unit,Landed,Received\nDPG,6.5,g,123456789.12345678901234567890123,2026-09-01\n");
        Assert.Contains("more digits than can be kept", tooFine.WhyRefused(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Heading_OfAnotherCurrency_IsNotTakenForTheStudios()
    {
        await using var studio = await StudioAsync();

        var refused = Assert.IsType<FileUnreadable>((await studio.SendAsync(BringInKind.Lots, "Material,Amount,Landed (GBP per kg or each),Received\nDPG,5 g,1,2026-09-01\n")).Refusal);

        Assert.Contains("The column “Landed (GBP per kg or each)” is wanted as “Landed (EUR per kg or each)”: change its numbers to that, then the heading.", refused.Problems);
    }

    [Fact]
    public async Task BringIn_WhileADeliveryIsPosted_GivesNoCodeTwice()
    {
        await using var studio = await StudioAsync();
        await using var db = studio.Db();
        var dpg = await db.Materials.Where(m => m.Name == "DPG").Select(m => m.Id).SingleAsync();
        var supplier = (await studio.Get<Suppliers>().AddAsync(studio.Ana, new AddSupplier { Name = "Alder" })).Expect();
        var seen = await studio.LookAsync(BringInKind.Lots, "Lot,Material,Amount,Unit,Landed,Received\nE-2,DPG,5.5,g,1,2026-09-01\n,DPG,6.5,g,1,2026-09-01\n");
        var delivery = new PostDelivery { SupplierId = supplier.Id, ReceivedOn = new DateOnly(2026, 10, 20), Lines = [.. Enumerable.Range(1, 3).Select(n => new DeliveryLineTyped { MaterialId = dpg, Quantity = n, Unit = Core.Quantities.AmountUnit.Kilogram, Price = 11 })] };

        var (both, posted) = (studio.TakeAsync(seen), studio.Get<Deliveries>().PostAsync(studio.Bo, delivery));
        var taken = await both;
        (await posted).Expect();

        // Who came second either went on counting after the other, or was told that the code is taken by then.
        var codes = (await studio.Get<Lots>().AllAsync()).Select(l => l.Code).ToList();
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.Equal(taken.Refusal is null ? 5 : 3, codes.Count);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }
}
