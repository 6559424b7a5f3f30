using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Core.Workings;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Whose number goes into the formula identifiers (UFI).</summary>
/// <param name="Number">Digits of the VAT number without its country letters, or the company key.</param>
public sealed record UfiOwner(UfiEntity Entity, string Number);

/// <summary>Where the studio sells, and the limits it holds itself to.</summary>
/// <param name="IsChosen">False while nobody has chosen: what is here are defaults.</param>
/// <param name="Version">To send back with a change; 0 while nothing was chosen.</param>
public sealed record WhereWeSell(
    bool IsChosen, MarketChoices Choices, IReadOnlyList<FlammableLimit> FlammableLimits, UfiOwner? Ufi, uint Version);

/// <summary>Reads where the studio sells; the one place that says what holds before anybody has chosen.</summary>
internal static class Markets
{
    /// <summary>The choices a formula is assessed by.</summary>
    /// <param name="today">In the studio's time zone: the day the rules are read for.</param>
    public static async Task<MarketChoices> OfAsync(StudioDb db, DateOnly today, CancellationToken cancel) => (await ReadAsync(db, today, cancel)).Choices;

    public static async Task<WhereWeSell> ReadAsync(StudioDb db, DateOnly today, CancellationToken cancel)
    {
        var row = await db.Market.AsNoTracking().AsSplitQuery()
            .Include(m => m.SubstanceLimits).ThenInclude(l => l.Categories)
            .Include(m => m.FlammableLimits).SingleOrDefaultAsync(cancel);
        return row is null ? NotChosen(today) : new(
            true,
            new(row.Scheme, [.. row.VocLimits], row.AllergenPercent, [.. row.SubstanceLimits.OrderBy(l => l.Position).Select(LimitOf)], today),
            [.. row.FlammableLimits.OrderBy(l => l.Position).Select(LimitOf)],
            row is { UfiEntity: { } entity, UfiNumber: { } number } ? new(entity, number) : null,
            row.Version);
    }

    private static WhereWeSell NotChosen(DateOnly today) => new(false, new(LabelScheme.EuropeanUnion, [], null, [], today), [], null, 0);

    private static SubstanceLimit LimitOf(OwnSubstanceLimit row) =>
        new(row.Name, [.. row.Cas], row.Amendment, row.Categories.ToDictionary(c => c.Category, c => c.MaxPercent), row.IsPhototoxic);

    private static FlammableLimit LimitOf(OwnFlammableLimit row)
    {
        var source = row is { Citation: { } citation, Status: { } status } ? new Source(citation, status) : null;
        return row.MaxMilligrams is { } most
            ? FlammableLimit.ByMass(row.Name, [.. row.Counts], Mass.FromMilligrams(most), source)
            : FlammableLimit.ByVolume(row.Name, [.. row.Counts], Volume.FromMillilitres(row.MaxMillilitres!.Value), source);
    }
}
