using System.Globalization;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Exchange;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Exchange;
using Microsoft.Net.Http.Headers;

namespace MakerStudio.Web.Shell.Sheets;

/// <summary>What a table that is saved knows of who asked: services, the studio's currency and time zone.</summary>
internal sealed record SheetAsked(HttpContext Context, StudioRow Studio)
{
    public TimeZoneInfo Zone { get; } = TimeZoneInfo.FindSystemTimeZoneById(Studio.TimeZone);

    /// <summary>ISO 4217, for headings of money.</summary>
    public string Currency => Studio.Currency;

    public CancellationToken Cancel => Context.RequestAborted;

    public T Get<T>()
        where T : notnull => Context.RequestServices.GetRequiredService<T>();

    public string Route(string name) => Context.Request.RouteValues[name] as string ?? "";

    /// <summary>For a part of the address that is said to be a Guid.</summary>
    public Guid Id(string name) => Guid.Parse(Route(name));

    public string? Query(string name) => Context.Request.Query[name];

    /// <summary>Null where it is not asked, or not a Guid.</summary>
    public Guid? QueryId(string name) => Guid.TryParse(Query(name), out var id) ? id : null;

    /// <summary>Null where it is not asked, or not written with a point.</summary>
    public decimal? QueryNumber(string name) =>
        decimal.TryParse(Query(name), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Null where it is not asked, or not written as 2026-11-25.</summary>
    public DateOnly? QueryDay(string name) =>
        DateOnly.TryParseExact(Query(name), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}

/// <summary>A table as a file: at its page's address with .csv or .xlsx behind it.</summary>
internal static class SheetFile
{
    private const string CsvType = "text/csv; charset=utf-8";
    private const string XlsxType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /// <param name="path">Without the ending: "/storeroom/materials".</param>
    /// <param name="name">Of the file, and of the sheet in a workbook; the day is put behind it.</param>
    /// <param name="read">Null when there is nothing at this address.</param>
    public static void MapSheet(this IEndpointRouteBuilder app, string path, string name, Func<SheetAsked, Task<Sheet?>> read)
    {
        app.MapGet(path + ".csv", context => SendAsync(context, name, read, "csv")).RequireAuthorization();
        app.MapGet(path + ".xlsx", context => SendAsync(context, name, read, "xlsx")).RequireAuthorization();
    }

    private static async Task SendAsync(HttpContext context, string name, Func<SheetAsked, Task<Sheet?>> read, string ending)
    {
        if (await context.RequestServices.GetRequiredService<StudioSettings>().ReadAsync(context.RequestAborted) is not { } studio
            || new SheetAsked(context, studio) is var asked && await read(asked) is not { } sheet)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var today = StudioTime.Today(context.RequestServices.GetRequiredService<TimeProvider>(), asked.Zone);
        var headers = context.Response.Headers;
        headers.ContentType = ending == "csv" ? CsvType : XlsxType;
        var disposition = new ContentDispositionHeaderValue("attachment");
        disposition.SetHttpFileName($"{name} {today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.{ending}");
        headers.ContentDisposition = disposition.ToString();
        headers.CacheControl = "private, no-store";
        headers.XContentTypeOptions = "nosniff";
        await (ending == "csv" ? CsvSheet.WriteAsync(sheet, context.Response.Body, context.RequestAborted) : SendBookAsync(sheet, name, context));
    }

    /// <summary>A workbook is packed by going back and forth in it, so it is made on disk and then sent.</summary>
    private static async Task SendBookAsync(Sheet sheet, string name, HttpContext context)
    {
        var path = Path.Combine(Path.GetTempPath(), $"makerstudio-{Guid.NewGuid():n}.xlsx");
        await using var file = new FileStream(
            path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        await XlsxSheet.WriteAsync(sheet, name, file, context.RequestAborted);
        context.Response.ContentLength = file.Length;
        file.Position = 0;
        await file.CopyToAsync(context.Response.Body, context.RequestAborted);
    }
}
