using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What is typed of a place.</summary>
public abstract record PlaceFields : StudioRequest
{
    public string Name { get; set; } = "";
    public string? Contact { get; set; }
    public string? Email { get; set; }
    public string? Phone { get; set; }
    public string? Address { get; set; }

    /// <summary>The shop's share of the net; null where nobody sells for us.</summary>
    public decimal? CommissionPercent { get; set; }

    /// <summary>The shop pays our cost for what breaks there.</summary>
    public bool PaysBroken { get; set; }
}

/// <summary>A shop on consignment or a stall.</summary>
public sealed record AddPlace : PlaceFields
{
    public PlaceKind Kind { get; set; } = PlaceKind.Consignment;
}

public sealed record ChangePlace : PlaceFields
{
    public Guid PlaceId { get; set; }
    public uint Version { get; set; }
}

/// <summary>Nothing is brought there any more. It must be empty.</summary>
public sealed record ClosePlace : StudioRequest
{
    public Guid PlaceId { get; set; }
}

public sealed class PlaceFieldsValidator : AbstractValidator<PlaceFields>
{
    public PlaceFieldsValidator()
    {
        RuleFor(r => r.Name).NotEmpty().WithMessage("The place needs a name.");
        RuleFor(r => r.Name).OneLine("The name", 80);
        RuleFor(r => r.Contact).OneLine("The contact", 120);
        RuleFor(r => r.Email).OneLine("The e-mail address", 200);
        RuleFor(r => r.Phone).OneLine("The phone number", 60);
        RuleFor(r => r.Address).SeveralLines("The address", 400);
        RuleFor(r => r.CommissionPercent).InclusiveBetween(0, 100).WithMessage("Commission is from 0 to 100 % of the net.");
        RuleFor(r => r).Must(r => r is not AddPlace { Kind: PlaceKind.Studio }).WithName(nameof(AddPlace.Kind)).WithMessage("There is one studio shelf, and it is here already.");
    }
}

public sealed record PlaceAdded(Guid PlaceId, string Name);

/// <param name="Available">Saleable units there.</param>
public sealed record PlaceRow(
    Guid Id, string Name, PlaceKind Kind, string? Contact, string? Email, string? Phone, string? Address, decimal? CommissionPercent, bool PaysBroken,
    bool IsClosed, uint Version, int Available);

public sealed partial class Places(StudioStore store)
{
    private static readonly PlaceFieldsValidator Shape = new();

    /// <summary>The studio's own shelf; every studio has it under this id.</summary>
    public static Guid StudioShelf => Place.StudioId;

    /// <summary>The studio's shelf first, then shops and stalls by name; closed ones last.</summary>
    public async Task<IReadOnlyList<PlaceRow>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await Rows(db, db.Places.OrderBy(p => p.ClosedAt != null).ThenByDescending(p => p.Kind == PlaceKind.Studio).ThenBy(p => p.Name)).ToListAsync(cancel);
    }

    public async Task<PlaceRow?> FindAsync(Guid placeId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await Rows(db, db.Places.Where(p => p.Id == placeId)).SingleOrDefaultAsync(cancel);
    }

    public Task<Outcome<PlaceAdded>> AddAsync(Actor actor, AddPlace request, CancellationToken cancel = default) =>
        store.RunAsync<AddPlace, PlaceAdded>(actor, request, Shape, async command =>
        {
            var name = request.Name.Trim();
            if (await TakenAsync(command.Db, name, Guid.Empty, cancel) is { } taken)
            {
                return taken;
            }

            var place = new Place { Name = name, Kind = request.Kind };
            Put(place, request);
            command.Db.Places.Add(place);
            command.Record("place", place.Id, $"Added {name}", Topics.Finished);
            return new PlaceAdded(place.Id, name);
        }, cancel: cancel);

    public Task<Outcome<Nothing>> ChangeAsync(Actor actor, ChangePlace request, CancellationToken cancel = default) =>
        store.RunAsync<ChangePlace, Nothing>(actor, request, Shape, async command =>
        {
            var place = await command.Db.Places.SingleOrDefaultAsync(p => p.Id == request.PlaceId, cancel);
            if (place is null)
            {
                return new NotFound("This place");
            }

            if (await TakenAsync(command.Db, request.Name.Trim(), place.Id, cancel) is { } taken)
            {
                return taken;
            }

            command.ExpectVersion(place, request.Version);
            place.Name = request.Name.Trim();
            Put(place, request);
            command.Record("place", place.Id, $"Changed {place.Name}", Topics.Finished);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale(place.Name, "Somebody");
        }, cancel: cancel);

    public Task<Outcome<Nothing>> CloseAsync(Actor actor, ClosePlace request, CancellationToken cancel = default) =>
        store.RunAsync<ClosePlace, Nothing>(actor, request, null, async command =>
        {
            var place = await LockAsync(command, request.PlaceId, cancel);
            if (place is null)
            {
                return new NotFound("This place");
            }

            if (place.Kind == PlaceKind.Studio)
            {
                return new Because("The studio's own shelf stays open.");
            }

            var left = await command.Db.UnitBalances.Where(b => b.PlaceId == place.Id && b.Status == UnitStatus.Saleable).SumAsync(b => b.Count, cancel);
            if (left > 0)
            {
                return new Because($"{left:#,0} units are still at {place.Name}.", "Record its last report, or bring them back, then close it.");
            }

            place.ClosedAt ??= command.Now;
            command.Record("place", place.Id, $"Closed {place.Name}", Topics.Finished);
            return Nothing.Value;
        }, cancel: cancel);

    /// <summary>Locked against being closed meanwhile, and before any batch; rows may still point to it. Null when there is none.</summary>
    internal static async Task<Place?> LockAsync(Command command, Guid placeId, CancellationToken cancel) =>
        (await command.Db.Places.FromSql($"select *, xmin from places where id = {placeId} for no key update").ToListAsync(cancel)) is [var place] ? place : null;

    private static async Task<Refusal?> TakenAsync(StudioDb db, string name, Guid own, CancellationToken cancel) =>
        await db.Places.AnyAsync(p => p.Id != own && p.Name.ToLower() == name.ToLower(), cancel)
            ? new Because($"There is a place called {name} already.", "Give this one another name, or use that one.") : null;

    private static void Put(Place place, PlaceFields typed)
    {
        place.Contact = Kept(typed.Contact);
        place.Email = Kept(typed.Email);
        place.Phone = Kept(typed.Phone);
        place.Address = Kept(typed.Address);
        place.CommissionPercent = place.Kind == PlaceKind.Consignment ? typed.CommissionPercent : null;
        place.PaysBroken = place.Kind == PlaceKind.Consignment && typed.PaysBroken;
    }

    private static string? Kept(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static IQueryable<PlaceRow> Rows(StudioDb db, IQueryable<Place> places) => places.Select(p => new PlaceRow(
        p.Id, p.Name, p.Kind, p.Contact, p.Email, p.Phone, p.Address, p.CommissionPercent, p.PaysBroken, p.ClosedAt != null, p.Version,
        db.UnitBalances.Where(b => b.PlaceId == p.Id && b.Status == UnitStatus.Saleable).Sum(b => b.Count)));
}
