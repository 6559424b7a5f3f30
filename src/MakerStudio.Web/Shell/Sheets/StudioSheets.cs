namespace MakerStudio.Web.Shell.Sheets;

/// <summary>Every table that can be saved; each room describes its own.</summary>
public static class StudioSheets
{
    public static WebApplication MapStudioSheets(this WebApplication app)
    {
        Today.TodaySheets.Map(app);
        Library.LibrarySheets.Map(app);
        Library.Workbench.VersionSheets.Map(app);
        Library.ScaleSheets.Map(app);
        Library.Rooms.RoomSheets.Map(app);
        Storeroom.StoreroomSheets.Map(app);
        Storeroom.MaterialSheets.Map(app);
        Storeroom.MaterialPriceSheets.Map(app);
        Storeroom.OrderSheets.Map(app);
        Bench.BenchSheets.Map(app);
        Curing.CuringSheets.Map(app);
        Finished.FinishedSheets.Map(app);
        Finished.BatchSheets.Map(app);
        Finished.LabelSheets.Map(app);
        Finished.Selling.SaleSheets.Map(app);
        Finished.Shops.PlaceSheets.Map(app);
        Finished.KitRoom.KitSheets.Map(app);
        Prices.PriceSheets.Map(app);
        Prices.ProductSheets.Map(app);
        Studio.SettingsSheets.Map(app);
        Prices.Worth.BooksSheets.Map(app);
        Studio.ActsSheet.Map(app);
        return app;
    }
}
