using System.Net.Mime;
using MakerStudio.Services.Exchange.FormulaFile;

namespace MakerStudio.Web.Library;

/// <summary>A version of a formula as a file of the open format; see docs/format.</summary>
public static class FormulaFileEndpoints
{
    public static WebApplication MapFormulaFiles(this WebApplication app)
    {
        app.MapGet("/library/{id:guid}/v/{number:int}/file", SaveAsync).RequireAuthorization();
        return app;
    }

    private static async Task<IResult> SaveAsync(Guid id, int number, FormulaFiles files, CancellationToken cancel) =>
        await files.SaveAsync(id, number, cancel) is { } file
            ? Results.File(file.Content, MediaTypeNames.Application.Json, file.Name)
            : Results.NotFound();
}
