using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Chooses where the studio sells and the limits it holds itself to. One save replaces the last. Owners only.</summary>
public sealed record SetWhereWeSell : StudioRequest
{
    public LabelScheme? Scheme { get; set; }

    /// <summary>Keys of the table of VOC limits.</summary>
    public List<string> VocLimits { get; set; } = [];

    /// <summary>Per cent of the finished product by weight; null where the market asks for none.</summary>
    public decimal? AllergenPercent { get; set; }
    public UfiEntity? UfiEntity { get; set; }
    public string? UfiNumber { get; set; }
    public List<SubstanceLimitLine> SubstanceLimits { get; set; } = [];
    public List<FlammableLimitLine> FlammableLimits { get; set; } = [];

    /// <summary>The version the form was opened with; 0 while nothing was chosen.</summary>
    public uint Version { get; set; }
}

/// <summary>A limit of the studio's own for a restricted substance.</summary>
public sealed record SubstanceLimitLine
{
    /// <summary>Tells two rows of equal content apart on a page; never kept.</summary>
    [JsonIgnore]
    public Guid Row { get; init; } = Guid.CreateVersion7();

    public string? Name { get; set; }

    /// <summary>One number, or several of a group, apart by commas or spaces.</summary>
    public string? Cas { get; set; }
    public string? Amendment { get; set; }
    public bool IsPhototoxic { get; set; }
    public List<CategoryLine> Categories { get; set; } = [];
}

/// <summary>How the most of a flammable liquid is stated.</summary>
public enum FlammableMeasure
{
    Litres,
    Kilograms,
}

/// <summary>How much flammable liquid the studio allows itself.</summary>
public sealed record FlammableLimitLine
{
    /// <summary>Tells two rows of equal content apart on a page; never kept.</summary>
    [JsonIgnore]
    public Guid Row { get; init; } = Guid.CreateVersion7();

    public string? Name { get; set; }
    public List<FlammableCategory> Counts { get; set; } = [];
    public decimal? Most { get; set; }
    public FlammableMeasure Measure { get; set; }

    /// <summary>Set when it was taken from the reference table.</summary>
    public string? Citation { get; set; }
    public DataStatus? Status { get; set; }
}

public sealed partial class StudioSettings
{
    private const decimal MillilitresPerLitre = 1000m;
    private const decimal MilligramsPerKilogram = 1_000_000m;
    private static readonly SetWhereWeSellValidator WhereWeSellShape = new();

    /// <summary>The form as it stands now; with no scheme while nobody has chosen.</summary>
    public async Task<SetWhereWeSell> WhereWeSellAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await MarketRowAsync(db, cancel) is { } row ? FormOf(row) : new SetWhereWeSell();
    }

    public Task<Outcome<Nothing>> SetWhereWeSellAsync(Actor actor, SetWhereWeSell request, CancellationToken cancel = default) =>
        store.RunAsync<SetWhereWeSell, Nothing>(actor, request, WhereWeSellShape, async command =>
        {
            // One at a time, so that two first choices do not collide.
            await command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('market'))", cancel);
            var row = await MarketRowAsync(command.Db, cancel);
            if ((row?.Version ?? 0) != request.Version)
            {
                return new Stale("where the studio sells", await MarketChangedByAsync(command, cancel));
            }

            if (row is not null)
            {
                command.Db.Market.Remove(row);
                await command.Db.SaveChangesAsync(cancel);
            }

            command.Db.Market.Add(RowOf(request));
            command.Record("studio", null, "Changed where the studio sells and which limits it holds to", Topics.Studio);
            return Nothing.Value;
        }, ownersOnly: true, cancel);

    private static Task<Market?> MarketRowAsync(StudioDb db, CancellationToken cancel) =>
        db.Market.AsSplitQuery().Include(m => m.SubstanceLimits).ThenInclude(l => l.Categories).Include(m => m.FlammableLimits).SingleOrDefaultAsync(cancel);

    private static async Task<string> MarketChangedByAsync(Command command, CancellationToken cancel) =>
        await command.Db.Acts.Where(a => a.Command == nameof(SetWhereWeSell)).OrderByDescending(a => a.Id)
            .Join(command.Db.Users, a => a.PersonId, p => p.Id, (a, p) => p.DisplayName).FirstOrDefaultAsync(cancel) ?? "Somebody";

    private static Market RowOf(SetWhereWeSell request)
    {
        var row = new Market
        {
            Scheme = request.Scheme!.Value,
            VocLimits = [.. request.VocLimits.Select(key => VocLimits.Find(key)!.Key).Distinct()],
            AllergenPercent = request.AllergenPercent,
            UfiEntity = request.UfiEntity,
            UfiNumber = request.UfiEntity is null ? null : request.UfiNumber?.Trim(),
        };
        row.SubstanceLimits.AddRange(request.SubstanceLimits.Select((line, index) => RowOf(line, index + 1)));
        row.FlammableLimits.AddRange(request.FlammableLimits.Select((line, index) => new OwnFlammableLimit
        {
            Position = index + 1, Name = line.Name!.Trim(), Counts = [.. line.Counts.Distinct().Order()],
            MaxMilligrams = line.Measure == FlammableMeasure.Kilograms ? (long)(line.Most!.Value * MilligramsPerKilogram) : null,
            MaxMillilitres = line.Measure == FlammableMeasure.Litres ? line.Most!.Value * MillilitresPerLitre : null,
            Citation = line.Citation, Status = line.Citation is null ? null : line.Status,
        }));
        return row;
    }

    private static OwnSubstanceLimit RowOf(SubstanceLimitLine line, int position)
    {
        var row = new OwnSubstanceLimit
        {
            Position = position, Name = line.Name!.Trim(), Cas = [.. CasList.Of(line.Cas).Select(text => CasNumber.Of(text).Text)],
            Amendment = line.Amendment!.Trim(), IsPhototoxic = line.IsPhototoxic,
        };
        row.Categories.AddRange(line.Categories.Select(c => new OwnSubstanceCategory
        {
            Position = position, Category = FragranceCategories.KeyOf(c.Category)!, MaxPercent = c.MaxPercent!.Value,
        }));
        return row;
    }

    private static SetWhereWeSell FormOf(Market row) => new()
    {
        Scheme = row.Scheme, VocLimits = [.. row.VocLimits], AllergenPercent = row.AllergenPercent,
        UfiEntity = row.UfiEntity, UfiNumber = row.UfiNumber, Version = row.Version,
        SubstanceLimits = [.. row.SubstanceLimits.OrderBy(l => l.Position).Select(l => new SubstanceLimitLine
        {
            Name = l.Name, Cas = string.Join(", ", l.Cas), Amendment = l.Amendment, IsPhototoxic = l.IsPhototoxic,
            Categories = [.. l.Categories.OrderBy(c => FragranceCategories.Place(c.Category)).Select(c => new CategoryLine { Category = c.Category, MaxPercent = c.MaxPercent })],
        })],
        FlammableLimits = [.. row.FlammableLimits.OrderBy(l => l.Position).Select(l => new FlammableLimitLine
        {
            Name = l.Name, Counts = [.. l.Counts], Citation = l.Citation, Status = l.Status,
            Measure = l.MaxMilligrams is null ? FlammableMeasure.Litres : FlammableMeasure.Kilograms,
            Most = l.MaxMilligrams is { } mg ? mg / MilligramsPerKilogram : l.MaxMillilitres / MillilitresPerLitre,
        })],
    };
}
