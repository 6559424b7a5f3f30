using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>The other person's version, whole, so that the form can show both.</summary>
public sealed record SafetyStale(SetSafety Theirs, string ChangedBy, DateTimeOffset ChangedAt) : Refusal
{
    public override string Happened => $"{ChangedBy} changed this safety sheet while you had it open.";
    public override string Kept => "What you typed is kept here, and nothing of theirs is lost.";
    public override string ToDo => "Look at both, then save again.";
}

public sealed partial class Materials
{
    private static readonly SetSafetyValidator SafetyShape = new();

    /// <summary>The form as it stands now, empty where nothing was stated; null when there is no such material.</summary>
    public async Task<SetSafety?> SafetyAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Materials.AnyAsync(m => m.Id == id, cancel) ? SafetyFormOf(id, await SafetyRowAsync(db, id, cancel)) : null;
    }

    public Task<Outcome<Nothing>> SetSafetyAsync(Actor actor, SetSafety request, CancellationToken cancel = default) =>
        store.RunAsync<SetSafety, Nothing>(actor, request, SafetyShape, async command =>
        {
            if (await LockMaterialAsync(command, request.MaterialId, cancel) is not { } material)
            {
                return new NotFound("This material");
            }

            if (DatesAhead(command, request) is { Count: > 0 } ahead)
            {
                return new NotAcceptable(ahead);
            }

            var row = await SafetyRowAsync(command.Db, material.Id, cancel);
            if ((row?.Version ?? 0) != request.Version)
            {
                return await SafetyStaleAsync(command, material, row, cancel);
            }

            var before = SafetyFormOf(material.Id, row);
            if (row is null)
            {
                row = new MaterialSafety { MaterialId = material.Id };
                command.Db.MaterialSafety.Add(row);
            }
            else
            {
                // The rows are replaced as a whole; a change of them alone must also make an older form stale.
                command.Db.RemoveRange(row.Composition);
                command.Db.RemoveRange(row.CertificateLimits);
                command.Db.Entry(row).Property(s => s.HoldsCitrus).IsModified = true;
                await command.Db.SaveChangesAsync(cancel);
                row.Composition.Clear();
                row.CertificateLimits.Clear();
            }

            Fill(row, request);
            command.Record("material", material.Id, SafetyFields.WhatChanged(material.Name, before, SafetyFormOf(material.Id, row)), Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    private static List<FieldProblem> DatesAhead(Command command, SetSafety request)
    {
        var latest = command.Today.AddDays(1);
        var ahead = new List<FieldProblem>();
        if (request.SheetDate > latest)
        {
            ahead.Add(new(nameof(SetSafety.SheetDate), "The sheet’s date lies ahead of today."));
        }

        if (request.CertificateIssuedOn > latest)
        {
            ahead.Add(new(nameof(SetSafety.CertificateIssuedOn), "The certificate’s date lies ahead of today."));
        }

        return ahead;
    }

    private static Task<MaterialSafety?> SafetyRowAsync(StudioDb db, Guid id, CancellationToken cancel) =>
        db.MaterialSafety.AsSplitQuery().Include(s => s.Composition.OrderBy(c => c.Position)).Include(s => s.CertificateLimits)
            .SingleOrDefaultAsync(s => s.MaterialId == id, cancel);

    private static async Task<SafetyStale> SafetyStaleAsync(Command command, Material material, MaterialSafety? row, CancellationToken cancel)
    {
        var last = await command.Db.Acts.Where(a => a.Subject == "material" && a.SubjectId == material.Id && a.Command == nameof(SetSafety)).OrderByDescending(a => a.Id)
            .Join(command.Db.Users, a => a.PersonId, p => p.Id, (a, p) => new { p.DisplayName, a.At }).FirstOrDefaultAsync(cancel);
        return new SafetyStale(SafetyFormOf(material.Id, row), last?.DisplayName ?? "Somebody", last?.At ?? command.Now);
    }
}
