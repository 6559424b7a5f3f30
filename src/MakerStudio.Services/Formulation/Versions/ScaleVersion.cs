using FluentValidation;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>What a batch is sized by.</summary>
public enum ScaleBy { Bottles, Mass, Lot }

/// <summary>A wish for a batch; asking changes nothing.</summary>
public sealed record ScaleWish
{
    public Guid VersionId { get; set; }
    public ScaleBy By { get; set; }

    /// <summary>Needed for bottles; with a mass or a lot it tells how many bottles come out.</summary>
    public Guid? SizeId { get; set; }
    public int? Bottles { get; set; }

    /// <summary>The whole batch.</summary>
    public decimal? Grams { get; set; }

    /// <summary>Use all of this lot.</summary>
    public Guid? LotId { get; set; }
}

public sealed class ScaleWishValidator : AbstractValidator<ScaleWish>
{
    private const decimal LargestGrams = Scaling.LargestBatchKilograms * 1000m;

    public ScaleWishValidator()
    {
        When(r => r.By == ScaleBy.Bottles, () =>
        {
            RuleFor(r => r.SizeId).NotNull().WithMessage("Choose the size to fill.");
            RuleFor(r => r.Bottles).NotNull().WithMessage("How many?").InclusiveBetween(1, Scaling.MostBottles).WithMessage("Give a number from 1 to 100,000.");
        });
        When(r => r.By == ScaleBy.Mass, () => RuleFor(r => r.Grams)
            .Must(g => g is > 0 and <= LargestGrams && g.Value.Scale <= 3).WithMessage("Give the mass of the batch, above 0 and to 3 decimals of a gram."));
        When(r => r.By == ScaleBy.Lot, () => RuleFor(r => r.LotId).NotNull().WithMessage("Choose the lot to use up."));
    }
}

/// <param name="Missing">What the shelf lacks of the material for the whole batch; zero when there is enough.</param>
/// <param name="Cost">Of this line, from the newest landed cost; null where not known.</param>
public sealed record ScaledLine(Guid LineId, LineMaterial Material, decimal Percent, Mass Target, Mass Missing, decimal? Cost);

/// <param name="Needed">Pieces.</param>
public sealed record ScaledPart(LineMaterial Material, long Needed, long Missing);

/// <param name="Fill">In one unit, overfill included; null without a size.</param>
/// <param name="Needed">Before rounding up.</param>
/// <param name="Bottles">Asked for, or how many a mass fills after the expected loss; null without a size.</param>
/// <param name="Largest">The largest batch the shelf allows now; null while nothing limits it.</param>
/// <param name="LargestBottles">How many that fills, packaging not looked at.</param>
/// <param name="PackagingFor">For how many the packaging is on the shelf; null where a size names none.</param>
public sealed record ScaleSheet(
    Mass? Fill, Mass Needed, Mass Total, int? Bottles, decimal LossPercent, IReadOnlyList<ScaledLine> Lines, IReadOnlyList<ScaledPart> Parts,
    decimal? MaterialsCost, LargestNow? Largest, int? LargestBottles, long? PackagingFor)
{
    public bool HasShortage => Lines.Any(l => l.Missing > Mass.Zero) || Parts.Any(p => p.Missing > 0);
}

/// <summary>The lines do not add up, so nothing can be scaled.</summary>
public sealed record DoesNotAddUp(IReadOnlyList<LineProblem> Problems) : Refusal
{
    public override string Happened => string.Join(' ', Problems.Select(p => p.Problem).Distinct());
    public override string Kept => "The draft is kept as it is.";
    public override string ToDo => "Mend the lines on the formula's page first.";
}

public sealed partial class Versions
{
    private static readonly ScaleWishValidator ScaleShape = new();

    /// <summary>Works a version out for a wish, with what is short on the shelf now. Nothing is reserved.</summary>
    public async Task<Outcome<ScaleSheet>> ScaleAsync(ScaleWish wish, CancellationToken cancel = default)
    {
        if (ScaleShape.Validate(wish) is { IsValid: false } bad)
        {
            return new NotAcceptable([.. bad.Errors.Select(e => new FieldProblem(e.PropertyName, e.ErrorMessage))]);
        }

        await using var db = await store.ReadAsync(cancel);
        var version = await FormulaRows.Versions(db, v => v.Id == wish.VersionId).SingleOrDefaultAsync(cancel);
        if (version is null)
        {
            return new NotFound("This version");
        }

        var kind = await db.Formulas.Where(f => f.Id == version.FormulaId).Select(f => f.ProductKind).SingleAsync(cancel);
        var size = wish.SizeId is null ? null : await FormulaRows.Sizes(db, s => s.FormulaId == version.FormulaId && s.Id == wish.SizeId).SingleOrDefaultAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var ids = version.Lines.Select(l => l.MaterialId).Concat(size?.Parts.Select(p => p.MaterialId) ?? []).ToArray();
        var materials = await LineMaterials.OfAsync(db, ids, today, cancel);
        var facts = await AssessedMaterials.OfAsync(db, version.Lines.Select(l => l.MaterialId), cancel);
        var worked = Worked.Of(kind, version.State, version.Lines, version.Measured, materials, facts);
        if (!worked.AddsUp)
        {
            return new DoesNotAddUp(worked.Problems);
        }

        var lot = wish.By == ScaleBy.Lot ? (await LineMaterials.UsableLotsAsync(db, ids, today, cancel)).FirstOrDefault(l => l.LotId == wish.LotId) : null;
        var roundUpTo = Mass.FromMilligrams(await db.Studio.Select(s => s.RoundBatchUpToMilligrams).SingleAsync(cancel));
        return ScaledBatch.Plan(wish, version, worked, size, lot, roundUpTo) switch
        {
            Done<ScalePlan> plan => ScaledBatch.Sheet(plan.Value, version, worked, size, materials),
            var refused => refused.Refusal!,
        };
    }

    /// <summary>The lots of a version's materials that may be weighed from today, in the order they would be picked.</summary>
    public async Task<IReadOnlyList<UsableLot>> LotsForAsync(Guid versionId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var ids = await db.FormulaLines.Where(l => l.FormulaVersionId == versionId).Select(l => l.MaterialId).Distinct().ToArrayAsync(cancel);
        return await LineMaterials.UsableLotsAsync(db, ids, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
    }
}
