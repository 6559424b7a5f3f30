using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Files;

namespace MakerStudio.Web.Finished.Selling;

/// <summary>Sales files come by plain HTTP: they are too large for the circuit. Rejected lines go the same way.</summary>
public static class SalesFileEndpoints
{
    internal const string Address = "/sales-files";

    public static WebApplication MapSalesFiles(this WebApplication app)
    {
        app.MapPost(Address, AddAsync).RequireAuthorization();
        app.MapGet(Address + "/{id:guid}/rejected.csv", (Guid id, HttpContext context, SalesFiles files) =>
            FilePost.Csv(context, "rejected-lines.csv", stream => files.WriteRejectedAsync(id, stream, context.RequestAborted))).RequireAuthorization();
        return app;
    }

    private static Task<IResult> AddAsync(HttpContext context, SalesFiles files) => FilePost.KeepAsync(context, AddSalesFile.MostBytes, async (actor, requestId, file, _) =>
    {
        await using var content = file.OpenReadStream();
        var outcome = await files.AddAsync(actor, new AddSalesFile { RequestId = requestId, Name = file.FileName }, content, context.RequestAborted);
        Outcome<Guid> kept = outcome.Refusal is { } why ? why : outcome.Expect().FileId;
        return kept;
    });
}
