using MakerStudio.Core.Materials;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Takes out a paper that was filed in the wrong place. That it was there, and who took it out, stays in the record.</summary>
public sealed record RemovePaper : StudioRequest
{
    public Guid PaperId { get; set; }
}

public sealed partial class Papers
{
    public Task<Outcome<Nothing>> RemoveAsync(Actor actor, RemovePaper request, CancellationToken cancel = default) =>
        store.RunAsync<RemovePaper, Nothing>(actor, request, null, async command =>
        {
            var paper = await command.Db.Papers.Where(p => p.Id == request.PaperId).Select(p => new { p.MaterialId, p.Kind, p.FileName }).SingleOrDefaultAsync(cancel);
            if (paper is null)
            {
                return new NotFound("This paper");
            }

            await command.Db.Papers.Where(p => p.Id == request.PaperId).ExecuteDeleteAsync(cancel);
            command.Record("material", paper.MaterialId, $"Took out {PaperKinds.Name(paper.Kind)} {paper.FileName}", Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);
}
