namespace MakerStudio.Web.Shell.Sheets;

/// <summary>Every table that can be saved; each room describes its own.</summary>
public static class StudioSheets
{
    public static WebApplication MapStudioSheets(this WebApplication app)
    {
        Storeroom.StoreroomSheets.Map(app);
        Library.LibrarySheets.Map(app);
        Bench.BenchSheets.Map(app);
        Curing.CuringSheets.Map(app);
        Finished.FinishedSheets.Map(app);
        Studio.ActsSheet.Map(app);
        return app;
    }
}
