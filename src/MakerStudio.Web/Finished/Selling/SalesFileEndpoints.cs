using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Finished.Selling;

/// <param name="FileId">Of the file that was kept; null when none was.</param>
public sealed record SalesFileAnswer(bool Done, string Happened, string Kept = "", string ToDo = "", Guid? FileId = null);

/// <summary>Sales files come by plain HTTP: they are too large for the circuit. Rejected lines go the same way.</summary>
public static class SalesFileEndpoints
{
    private const string Address = "/sales-files";

    public static WebApplication MapSalesFiles(this WebApplication app)
    {
        app.MapPost(Address, AddAsync).RequireAuthorization();
        app.MapGet(Address + "/{id:guid}/rejected.csv", RejectedAsync).RequireAuthorization();
        return app;
    }

    private static async Task<IResult> AddAsync(
        HttpContext context, SalesFiles files, IAntiforgery antiforgery, IOptions<IdentityOptions> identity, CancellationToken cancel)
    {
        if (!FilePost.Fits(context, AddSalesFile.MostBytes))
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, "This file is larger than 64 MB.", "Split it, and post one part after the other.");
        }

        if (!await antiforgery.IsRequestValidAsync(context) || !context.Request.HasFormContentType)
        {
            return Refused(StatusCodes.Status400BadRequest, "This form is no longer good.", "Open the page again and choose the file once more.");
        }

        try
        {
            var form = await FilePost.ReadAsync(context, AddSalesFile.MostBytes, cancel);
            if (form.Files.GetFile("file") is not { } file || !Guid.TryParse(form["requestId"], out var requestId))
            {
                return Refused(StatusCodes.Status400BadRequest, "The form came without a file.", "Choose the file and send it again.");
            }

            await using var content = file.OpenReadStream();
            var outcome = await files.AddAsync(CurrentPerson.ActorOf(context.User, identity.Value), new AddSalesFile { RequestId = requestId, Name = file.FileName }, content, cancel);
            return outcome.Refusal is { } why
                ? Results.Json(new SalesFileAnswer(false, why.Happened, why.Kept, why.ToDo)) // an answer of the rules, no fault of the line
                : Results.Json(new SalesFileAnswer(true, $"{file.FileName} is read; nothing is sold yet.", FileId: outcome.Expect().FileId));
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException)
        {
            return Refused(StatusCodes.Status400BadRequest, "The file did not come through whole.", "Send it again; it is kept once, however often you send it.");
        }
    }

    private static IResult RejectedAsync(Guid id, HttpContext context, SalesFiles files)
    {
        context.Response.Headers.XContentTypeOptions = "nosniff";
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.Stream(stream => files.WriteRejectedAsync(id, stream, context.RequestAborted), "text/csv; charset=utf-8", "rejected-lines.csv");
    }

    private static IResult Refused(int status, string happened, string toDo) =>
        Results.Json(new SalesFileAnswer(false, happened, "Nothing was kept; the form stays as it is.", toDo), statusCode: status);
}
