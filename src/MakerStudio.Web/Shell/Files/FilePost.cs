using MakerStudio.Services;
using MakerStudio.Web.Account;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Shell.Files;

/// <summary>A form with a file, sent by plain HTTP because it is too large for the circuit.</summary>
internal static class FilePost
{
    private const long Megabyte = 1024 * 1024;

    /// <summary>What the fields and boundaries around a file may take, bytes.</summary>
    private const int FormAround = 64 * 1024;

    /// <summary>Whether the post says how long it is and is no longer than a file of this many bytes needs; lifts the server's own limit to that.</summary>
    public static bool Fits(HttpContext context, long mostBytes)
    {
        if (context.Request.ContentLength is not { } length || length > mostBytes + FormAround)
        {
            return false;
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } most)
        {
            most.MaxRequestBodySize = mostBytes + FormAround;
        }

        return true;
    }

    /// <exception cref="InvalidDataException">It did not come through whole, or is longer than it may be.</exception>
    /// <exception cref="BadHttpRequestException">The line broke.</exception>
    public static Task<IFormCollection> ReadAsync(HttpContext context, long mostBytes, CancellationToken cancel) =>
        context.Request.ReadFormAsync(new FormOptions { MultipartBodyLengthLimit = mostBytes + FormAround, ValueLengthLimit = FormAround }, cancel);

    /// <summary>Takes a file of rows from <c>SendFile</c> to a service that keeps it, and answers in a <see cref="FileAnswer"/>.</summary>
    /// <param name="keep">Who sends it, the id of the request, the file, the other fields; answers with the id the file is kept under, or null when a field cannot be read.</param>
    public static async Task<IResult> KeepAsync(HttpContext context, long mostBytes, Func<Actor, Guid, IFormFile, IFormCollection, Task<Outcome<Guid>?>> keep)
    {
        if (!Fits(context, mostBytes))
        {
            return Refused(StatusCodes.Status413PayloadTooLarge, $"This file is larger than {mostBytes / Megabyte} MB.", "Part it, and send one part after the other.");
        }

        if (!await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context) || !context.Request.HasFormContentType)
        {
            return Refused(StatusCodes.Status400BadRequest, "This form is no longer good.", "Open the page again and choose the file once more.");
        }

        try
        {
            var form = await ReadAsync(context, mostBytes, context.RequestAborted);
            var identity = context.RequestServices.GetRequiredService<IOptions<IdentityOptions>>().Value;
            if (form.Files.GetFile("file") is not { } file || !Guid.TryParse(form["requestId"], out var requestId)
                || await keep(CurrentPerson.ActorOf(context.User, identity), requestId, file, form) is not { } outcome)
            {
                return Refused(StatusCodes.Status400BadRequest, "The form came without a file.", "Choose the file and send it again.");
            }

            return outcome.Refusal is { } why
                ? Results.Json(new FileAnswer(false, why.Happened, why.Kept, why.ToDo)) // an answer of the rules, no fault of the line
                : Results.Json(new FileAnswer(true, $"{file.FileName} is read; nothing is done yet.", FileId: outcome.Expect()));
        }
        catch (Exception broken) when (broken is InvalidDataException or BadHttpRequestException)
        {
            return Refused(StatusCodes.Status400BadRequest, "The file did not come through whole.", "Send it again; it is kept once, however often you send it.");
        }
    }

    /// <summary>A CSV of a file's rows, never kept by what stands between.</summary>
    public static IResult Csv(HttpContext context, string name, Func<Stream, Task> writeAsync)
    {
        context.Response.Headers.XContentTypeOptions = "nosniff";
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.Stream(writeAsync, "text/csv; charset=utf-8", name);
    }

    private static IResult Refused(int status, string happened, string toDo) =>
        Results.Json(new FileAnswer(false, happened, "Nothing was kept; the form stays as it is.", toDo), statusCode: status);
}
