using MakerStudio.Core.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Today;

/// <summary>The tables of the first page as files.</summary>
internal static class TodaySheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/today/low", "runs low", async asked => Low.Of((await asked.Get<TodayRead>().ReadAsync()).Low, asked.Zone));
        app.MapSheet("/today/dated", "lots that wait or expire", async asked => Dated.Of((await asked.Get<TodayRead>().ReadAsync()).Lots, asked.Zone));
    }

    private static readonly SheetOf<LowRow> Low = new SheetOf<LowRow>()
        .Text("Item", r => r.Name).Text("Stocked in", r => Written.Unit(r.Unit))
        .Number("Available (g or each)", r => Shown(r.Available, r.Unit)).Number("On hand (g or each)", r => Shown(r.OnHand, r.Unit))
        .Number("Reserved (g or each)", r => Shown(r.Reserved, r.Unit)).Number("Cover (days)", r => r.CoverDays).Number("Lead time (days)", r => r.LeadDays)
        .Number("On its way (g or each)", r => Shown(r.OnItsWay?.Units, r.Unit)).Date("Expected", r => r.OnItsWay?.ExpectedOn)
        .Date("Order by", r => r.OrderBy).Text("Order today", r => r.OrderNow ? "yes" : "no");

    private static readonly SheetOf<DatedLot> Dated = new SheetOf<DatedLot>()
        .Text("Lot", r => r.Code).Text("Material", r => r.Material).Number("On hand (g or each)", r => Shown(r.OnHand, r.Unit)).Text("Stocked in", r => Written.Unit(r.Unit))
        .Text("State", r => LotWords.Status(r.Status)).Text("Why", r => r.Why).Text("What to do", r => r.ToDo);
}
