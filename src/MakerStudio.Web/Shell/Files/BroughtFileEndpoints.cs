using MakerStudio.Services;
using MakerStudio.Services.Exchange;

namespace MakerStudio.Web.Shell.Files;

/// <summary>Files of materials, lots and formulas come by plain HTTP; empty ones to fill in and refused rows go the same way.</summary>
public static class BroughtFileEndpoints
{
    internal const string Address = "/brought-files";

    public static WebApplication MapBroughtFiles(this WebApplication app)
    {
        app.MapPost(Address, AddAsync).RequireAuthorization();
        app.MapGet(Address + "/{id:guid}/refused.csv", (Guid id, string? mark, HttpContext context, BroughtFiles files) =>
            FilePost.Csv(context, "refused-rows.csv", stream => files.WriteRefusedAsync(id, mark is "." or "," ? mark[0] : null, stream, context.RequestAborted))).RequireAuthorization();
        app.MapGet(Address + "/empty/{kind}.csv", (string kind, HttpContext context, BroughtFiles files) => Enum.TryParse<BringInKind>(kind, ignoreCase: true, out var known) && Enum.IsDefined(known)
            ? FilePost.Csv(context, $"{known.ToString().ToLowerInvariant()}.csv", stream => files.WriteEmptyAsync(known, stream, context.RequestAborted))
            : Results.NotFound()).RequireAuthorization();
        return app;
    }

    internal static string Empty(BringInKind kind) => $"{Address}/empty/{kind.ToString().ToLowerInvariant()}.csv";

    private static Task<IResult> AddAsync(HttpContext context, BroughtFiles files) => FilePost.KeepAsync(context, AddBroughtFile.MostBytes, async (actor, requestId, file, form) =>
    {
        if (!Enum.TryParse<BringInKind>(form["kind"], out var kind))
        {
            return null;
        }

        await using var content = file.OpenReadStream();
        var outcome = await files.AddAsync(actor, new AddBroughtFile { RequestId = requestId, Kind = kind, Name = file.FileName }, content, context.RequestAborted);
        Outcome<Guid> kept = outcome.Refusal is { } why ? why : outcome.Expect().FileId;
        return kept;
    });
}
