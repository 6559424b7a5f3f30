using System.Text.Json;
using System.Text.Json.Serialization;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A form kept as it was typed, who kept it and when.</summary>
public sealed record OpenDraft<T>(Guid Id, T Draft, string KeptBy, DateTimeOffset KeptAt);

public sealed record DraftKept(Guid DraftId, DateTimeOffset KeptAt);

/// <summary>The draft was posted, sent or put away meanwhile.</summary>
public sealed record DraftGone(string Became, string LookAt) : Refusal
{
    public override string Happened => $"This draft was {Became} or put away since you opened it.";
    public override string Kept => "What you typed is still on this page.";
    public override string ToDo => $"Look at {LookAt} before you do it again.";
}

/// <summary>Forms of one kind, kept while they are typed, so that a reload or a lost line loses nothing.</summary>
/// <param name="kind">As it stands in the table of drafts.</param>
/// <param name="what">"this delivery", for a sentence.</param>
/// <param name="became">What happens to a draft when it is done with: "posted".</param>
/// <param name="lookAt">Where it is then: "the deliveries".</param>
internal sealed class TypedDrafts<T>(string kind, string what, string became, string lookAt)
    where T : class
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    public DraftGone Gone => new(became, lookAt);

    /// <param name="seen">When the version on the screen was kept; null for a new draft.</param>
    public async Task<Outcome<DraftKept>> KeepAsync(Command command, Guid id, DateTimeOffset? seen, T typed)
    {
        var draft = await LockAsync(command, id);
        if (draft is null && seen is not null)
        {
            return Gone;
        }

        if (draft is not null && draft.KeptAt != seen)
        {
            var other = await command.Db.Users.Where(p => p.Id == draft.KeptById).Select(p => p.DisplayName).SingleAsync();
            return new Stale(what, other, draft.KeptAt);
        }

        draft = Put(command, draft, id, typed);
        return new DraftKept(draft.Id, draft.KeptAt);
    }

    /// <summary>A new draft, or new content for the one found.</summary>
    public Draft Put(Command command, Draft? found, Guid id, T typed)
    {
        var draft = found ?? new Draft { Id = id, Kind = kind, Body = "" };
        if (found is null)
        {
            command.Db.Drafts.Add(draft);
        }

        draft.Body = JsonSerializer.Serialize(typed, Json);
        draft.KeptById = command.PersonId;
        draft.KeptAt = command.Now;
        return draft;
    }

    public async Task<Draft?> LockAsync(Command command, Guid id)
    {
        var found = await command.Db.Drafts.FromSql($"select * from drafts where id = {id} and kind = {kind} for update").ToListAsync();
        return found is [var draft] ? draft : null;
    }

    public async Task<OpenDraft<T>?> FindAsync(StudioDb db, Guid id, CancellationToken cancel) =>
        (await OpenAsync(db, db.Drafts.Where(d => d.Id == id && d.Kind == kind), cancel)).SingleOrDefault();

    /// <summary>The last kept first.</summary>
    public Task<List<OpenDraft<T>>> ListAsync(StudioDb db, int most, CancellationToken cancel) =>
        OpenAsync(db, db.Drafts.Where(d => d.Kind == kind).OrderByDescending(d => d.KeptAt).Take(most), cancel);

    public Task DropAsync(StudioDb db, Guid id, CancellationToken cancel) =>
        db.Drafts.Where(d => d.Id == id && d.Kind == kind).ExecuteDeleteAsync(cancel);

    private static async Task<List<OpenDraft<T>>> OpenAsync(StudioDb db, IQueryable<Draft> drafts, CancellationToken cancel)
    {
        var rows = await drafts
            .Select(d => new { d.Id, d.Body, d.KeptAt, KeptBy = db.Users.Where(p => p.Id == d.KeptById).Select(p => p.DisplayName).First() })
            .ToListAsync(cancel);
        return [.. rows.Select(d => new OpenDraft<T>(d.Id, JsonSerializer.Deserialize<T>(d.Body, Json)!, d.KeptBy, d.KeptAt))];
    }
}
