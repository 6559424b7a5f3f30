using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell.Files;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Storeroom;

/// <summary>Papers come and go by plain HTTP: they are too large for the circuit.</summary>
public static class PaperEndpoints
{
    private const string Address = "/papers";

    /// <summary>A paper is read, never run: no script, no style, no frame, an origin of its own.</summary>
    private const string PaperPolicy = "default-src 'none'; sandbox; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static WebApplication MapPapers(this WebApplication app)
    {
        app.MapPost(Address, AddAsync).RequireAuthorization();
        app.MapGet(Address + "/{id:guid}", ReadAsync).RequireAuthorization();
        return app;
    }

    private static async Task<IResult> AddAsync(
        HttpContext context, Papers papers, IAntiforgery antiforgery, IOptions<IdentityOptions> identity, CancellationToken cancel)
    {
        if (!FilePost.Fits(context, AddPaper.MostBytes))
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, "This file is larger than 10 MB.", "Save it smaller, or file the pages that matter.");
        }

        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return Refused(StatusCodes.Status400BadRequest, "This form is no longer good.", "Open the page again and file the paper once more.");
        }

        if (!context.Request.HasFormContentType)
        {
            return Refused(StatusCodes.Status415UnsupportedMediaType, "This was not sent by the form.", "Open the page of the material and file the paper there.");
        }

        try
        {
            var form = await FilePost.ReadAsync(context, AddPaper.MostBytes, cancel);
            var request = await RequestOfAsync(form, cancel);
            return request is null
                ? Refused(StatusCodes.Status400BadRequest, "The form came without a file, or a field of it cannot be read.", "Choose the file and send it again.")
                : Answer(await papers.AddAsync(CurrentPerson.ActorOf(context.User, identity.Value), request, cancel));
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException)
        {
            return Refused(StatusCodes.Status400BadRequest, "The file did not come through whole.", "Send it again; it is filed once, however often you send it.");
        }
    }

    private static async Task<AddPaper?> RequestOfAsync(IFormCollection form, CancellationToken cancel)
    {
        var date = form["editionDate"].ToString();
        DateOnly day = default;
        if (form.Files.GetFile("file") is not { } file
            || !Guid.TryParse(form["requestId"], out var requestId) || !Guid.TryParse(form["materialId"], out var materialId)
            || !Enum.TryParse<PaperKind>(form["kind"], out var kind)
            || (date.Length > 0 && !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day)))
        {
            return null;
        }

        var lot = form["lotId"].ToString();
        Guid lotId = default;
        if (lot.Length > 0 && !Guid.TryParse(lot, out lotId))
        {
            return null;
        }

        using var content = new MemoryStream((int)Math.Min(file.Length, AddPaper.MostBytes + 1));
        await file.CopyToAsync(content, cancel);
        return new AddPaper
        {
            RequestId = requestId, MaterialId = materialId, LotId = lot.Length > 0 ? lotId : null, Kind = kind,
            Edition = form["edition"], EditionDate = date.Length > 0 ? day : null, FileName = file.FileName, Content = content.ToArray(),
        };
    }

    private static async Task<IResult> ReadAsync(Guid id, HttpContext context, Papers papers, CancellationToken cancel)
    {
        if (await papers.ReadAsync(id, cancel) is not { } file)
        {
            return Results.NotFound();
        }

        context.Response.Headers.XContentTypeOptions = "nosniff";
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.File(file.Content, file.ContentType, file.FileName);
    }

    /// <summary>
    /// Gives papers their stricter policy in place of the pages'. Stands before the middleware that sets the pages': what
    /// is asked for first is done last as the headers go out.
    /// </summary>
    internal static Task SealAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path.StartsWithSegments(Address))
        {
            context.Response.OnStarting(() =>
            {
                context.Response.Headers.ContentSecurityPolicy = PaperPolicy;
                return Task.CompletedTask;
            });
        }

        return next(context);
    }

    private static IResult Answer(Outcome<PaperAdded> outcome) => outcome.Refusal is { } why
        ? Results.Json(new PaperAnswer(false, why.Happened, why.Kept, why.ToDo)) // an answer of the rules, no fault of the line
        : Results.Json(new PaperAnswer(true, $"{outcome.Expect().FileName} is filed."));

    private static IResult Refused(int status, string happened, string toDo) =>
        Results.Json(new PaperAnswer(false, happened, "Nothing was filed; the form stays as it is.", toDo), statusCode: status);
}
