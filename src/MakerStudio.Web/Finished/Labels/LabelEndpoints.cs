using System.Globalization;
using MakerStudio.Core.Labels.Type;
using MakerStudio.Services;
using MakerStudio.Services.Labels;
using MakerStudio.Web.Account;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Finished;

/// <summary>
/// Labels go to the printer as PDFs of their own address. The print is a post, recorded once for each request id; what it
/// leads to only reads, so that opening it again prints nothing anew.
/// </summary>
public static class LabelEndpoints
{
    private const string Address = "/labels";

    /// <summary>A file to look at: no script and no frame; the browser's own viewer needs its object and style.</summary>
    private const string FilePolicy = "default-src 'none'; object-src 'self'; plugin-types application/pdf; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static WebApplication MapLabels(this WebApplication app)
    {
        var labels = app.MapGroup(Address).RequireAuthorization();
        labels.MapPost("/print", PrintAsync);
        labels.MapGet("/prints/{id:guid}", async (Guid id, HttpContext context, BatchLabels batches) => Show(context, await batches.FileAsync(id, context.RequestAborted)));
        labels.MapGet("/outlines/{id:guid}", async (Guid id, string? across, string? down, HttpContext context, BatchLabels batches) =>
            Show(context, await batches.OutlinesAsync(id, Millimetres(across) ?? 0m, Millimetres(down) ?? 0m, context.RequestAborted)));
        labels.MapGet("/fonts/{face}.ttf", Font);
        return app;
    }

    /// <summary>Gives the files their own policy in place of the pages'; see <see cref="Storeroom.PaperEndpoints.SealAsync"/>.</summary>
    internal static Task SealAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path.StartsWithSegments(Address) && HttpMethods.IsGet(context.Request.Method))
        {
            context.Response.OnStarting(() =>
            {
                context.Response.Headers.ContentSecurityPolicy = FilePolicy;
                return Task.CompletedTask;
            });
        }

        return next(context);
    }

    private static async Task<IResult> PrintAsync(HttpContext context, BatchLabels labels, IAntiforgery antiforgery, IOptions<IdentityOptions> identity)
    {
        if (!context.Request.HasFormContentType || !await antiforgery.IsRequestValidAsync(context))
        {
            return Results.BadRequest();
        }

        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        if (RequestOf(form, $"{context.Request.Scheme}://{context.Request.Host}{context.Request.PathBase}/") is not { } request)
        {
            return Results.BadRequest();
        }

        var outcome = await labels.PrintAsync(CurrentPerson.ActorOf(context.User, identity.Value), request, context.RequestAborted);
        // The page of the batch says why nothing is printed; it stands as it was in its own tab too.
        return SeeOther(context, outcome is Done<LabelsPrinted> done
            ? $"{Address}/prints/{done.Value.PrintId}"
            : $"/finished/{Uri.EscapeDataString(form["code"].ToString())}/label");
    }

    private static IResult SeeOther(HttpContext context, string path)
    {
        context.Response.Headers.Location = path;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }

    private static PrintLabels? RequestOf(IFormCollection form, string studioAddress)
    {
        var day = form["bestBefore"].ToString();
        DateOnly bestBefore = default;
        return Guid.TryParse(form["requestId"], out var requestId) && Guid.TryParse(form["batchId"], out var batchId)
            && (day.Length == 0 || DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out bestBefore))
            ? new PrintLabels
            {
                RequestId = requestId, BatchId = batchId, Count = Whole(form["count"]), FirstPlace = Whole(form["firstPlace"]),
                OffsetAcross = Millimetres(form["across"]), OffsetDown = Millimetres(form["down"]), BestBefore = day.Length == 0 ? null : bestBefore, StudioAddress = studioAddress,
            }
            : null;
    }

    private static IResult Show(HttpContext context, LabelFile? file)
    {
        if (file is null)
        {
            return Results.NotFound();
        }

        context.Response.Headers.ContentDisposition = $"inline; filename=\"{file.FileName}\"";
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.File(file.Content, "application/pdf");
    }

    /// <summary>The letters of the label, so that the page shows it as it prints.</summary>
    private static IResult Font(string face, HttpContext context)
    {
        if (LabelFace.All.FirstOrDefault(each => each.Key == face) is not { } found)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=604800";
        return Results.File(found.File.ToArray(), "font/ttf");
    }

    private static int? Whole(string? text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : null;

    private static decimal? Millimetres(string? text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm) ? mm : null;
}
