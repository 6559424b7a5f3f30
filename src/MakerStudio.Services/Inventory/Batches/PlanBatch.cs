using FluentValidation;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Plans a batch of a released version. Its outstanding targets are from then on reserved.</summary>
public sealed record PlanBatch : StudioRequest
{
    public Guid FormulaVersionId { get; set; }
    public Guid? FormulaSizeId { get; set; }

    /// <summary>Bottles; needs a size.</summary>
    public int? PlannedUnits { get; set; }

    /// <summary>Null works it out from the bottles, with the expected loss, rounded up to the studio's step.</summary>
    public long? TargetMilligrams { get; set; }

    /// <summary>Null takes the first scale that is not retired.</summary>
    public Guid? ScaleId { get; set; }
    public string? Place { get; set; }
    public string? Note { get; set; }
}

/// <param name="Shortages">Warnings: a plan may be short, receipts can still come.</param>
/// <param name="Cautions">Other things to know before weighing, in words.</param>
public sealed record PlannedBatch(Guid BatchId, string Code, long TargetMilligrams, IReadOnlyList<Shortage> Shortages, IReadOnlyList<string> Cautions);

public sealed class PlanBatchValidator : AbstractValidator<PlanBatch>
{
    public PlanBatchValidator()
    {
        RuleFor(r => r.FormulaVersionId).NotEmpty().WithMessage("Choose the formula to make.");
        RuleFor(r => r.TargetMilligrams).InclusiveBetween(1, BatchSizes.LargestMilligrams).When(r => r.TargetMilligrams is not null)
            .WithMessage("A batch is from 1 mg to 1,000 tonnes.");
        RuleFor(r => r.PlannedUnits).InclusiveBetween(1, Scaling.MostBottles).When(r => r.PlannedUnits is not null)
            .WithMessage("Give a number of bottles from 1 to 100,000.");
        RuleFor(r => r.PlannedUnits).NotNull().When(r => r.TargetMilligrams is null).WithMessage("Say how many bottles, or how many grams, to make.");
        RuleFor(r => r.FormulaSizeId).NotNull().When(r => r.PlannedUnits is not null).WithMessage("Choose the size of the bottles.");
        RuleFor(r => r.Place).MaximumLength(80).WithMessage("The place has room for 80 characters.");
        RuleFor(r => r.Note).MaximumLength(2000).WithMessage("The note has room for 2,000 characters.");
    }
}

public static class BatchSizes
{
    /// <summary>1,000 tonnes in milligrams, the bound of Core's scaling.</summary>
    public const long LargestMilligrams = Scaling.LargestBatchKilograms * 1_000_000L;

    /// <summary>Readability where the studio has no scale yet: 0.1 g, common practice, no source.</summary>
    public const long UsualReadabilityMilligrams = 100;

    /// <summary>Typed grams as milligrams; what is larger than any batch becomes just that, so that the validator can say so.</summary>
    public static long Milligrams(decimal grams) =>
        grams > LargestMilligrams / (decimal)Mass.MilligramsPerGram ? LargestMilligrams + 1 : Mass.RoundGrams(grams).Milligrams;
}

/// <summary>Only a released version can be made.</summary>
public sealed record NotReleasedYet(string Formula) : Refusal
{
    public override string Happened => $"{Formula} is still a draft.";
    public override string ToDo => "Release the version in the Library, then plan the batch.";
}

public sealed partial class Batches
{
    private static readonly PlanBatchValidator PlanBatchShape = new();

    public Task<Outcome<PlannedBatch>> PlanAsync(Actor actor, PlanBatch request, CancellationToken cancel = default) =>
        store.RunAsync<PlanBatch, PlannedBatch>(actor, request, PlanBatchShape, async command =>
        {
            var version = await command.Db.FormulaVersions
                .Include(v => v.Formula).Include(v => v.Lines).ThenInclude(l => l.Material)
                .AsNoTracking().SingleOrDefaultAsync(v => v.Id == request.FormulaVersionId, cancel);
            if (version is null)
            {
                return new NotFound("This formula version");
            }

            if (version.State != FormulaState.Released)
            {
                return new NotReleasedYet($"{version.Formula!.Name} v{version.Number}");
            }

            var (size, scale, refusal) = await FindSizeAndScaleAsync(command, request, version, cancel);
            if (refusal is not null)
            {
                return refusal;
            }

            var batch = await SnapshotAsync(command, request, version, size, scale);
            if (SetTarget(command, batch, request) is { } why)
            {
                return why;
            }

            command.Db.Batches.Add(batch);
            command.Record("batch", batch.Id, $"Planned {batch.Code}: {AmountWords.Grams(batch.TargetMilligrams)} of {batch.ScentName} v{batch.VersionNumber}", Topics.Batches);
            await command.Db.SaveChangesAsync(cancel);
            return new PlannedBatch(
                batch.Id, batch.Code, batch.TargetMilligrams, await Shortages.OfAsync(command.Db, batch.Id, command.Today, cancel), Cautions(batch, scale));
        }, cancel: cancel);

    private static async Task<(FormulaSize? Size, Scale? Scale, Refusal? Why)> FindSizeAndScaleAsync(
        Command command, PlanBatch request, FormulaVersion version, CancellationToken cancel)
    {
        FormulaSize? size = null;
        if (request.FormulaSizeId is { } sizeId)
        {
            size = await command.Db.FormulaSizes.Include(s => s.Parts).AsNoTracking()
                .SingleOrDefaultAsync(s => s.Id == sizeId && s.FormulaId == version.FormulaId && s.RetiredAt == null, cancel);
            if (size is null)
            {
                return (null, null, new NotFound("This size of the formula"));
            }
        }

        var scales = command.Db.Scales.AsNoTracking().Where(s => s.RetiredAt == null);
        var scale = request.ScaleId is { } scaleId
            ? await scales.SingleOrDefaultAsync(s => s.Id == scaleId, cancel)
            : await scales.OrderBy(s => s.Name).FirstOrDefaultAsync(cancel);
        return request.ScaleId is not null && scale is null ? (null, null, new NotFound("This scale")) : (size, scale, null);
    }

    private static async Task<Batch> SnapshotAsync(Command command, PlanBatch request, FormulaVersion version, FormulaSize? size, Scale? scale)
    {
        var kind = ProductKinds.Get(version.Formula!.ProductKind);
        var lines = version.Lines.OrderBy(l => l.Position).ToList();
        var density = version.MeasuredDensity ?? await EstimateAsync(command.Db, lines);
        var batch = new Batch
        {
            Code = await command.NextCodeAsync(kind.CodePrefix), FormulaVersionId = version.Id, ScentName = version.Formula.Name,
            VersionNumber = version.Number, ProductKind = kind.Key, Method = version.Method, CureMinHours = version.CureMinHours,
            CureIdealHours = version.CureIdealHours, CureLatestHours = version.CureLatestHours,
            TolerancePercent = version.TolerancePercent ?? command.Studio.TolerancePercent, ToleranceDivisions = command.Studio.ToleranceDivisions,
            ExpectedLossPercent = version.ExpectedLossPercent, DensityUsed = density, State = BatchState.Planned,
            SizeName = size?.Name, NominalMillilitres = size?.NominalMillilitres, NominalMilligrams = size?.NominalMilligrams,
            FillMilligrams = FillMilligrams(size, density), ScaleId = scale?.Id,
            ReadabilityMilligrams = scale?.ReadabilityMilligrams ?? BatchSizes.UsualReadabilityMilligrams,
            Place = Blank(request.Place), Note = Blank(request.Note), PlannedById = command.PersonId, PlannedAt = command.Now,
        };
        foreach (var line in lines)
        {
            batch.Lines.Add(new BatchLine
            {
                Position = line.Position, MaterialId = line.MaterialId, MaterialName = line.Material!.Name, Fraction = line.Fraction!.Value,
                Method = line.Method, DensityUsed = line.DensityUsed ?? line.Material.Density,
            });
        }

        foreach (var part in size?.Parts ?? [])
        {
            batch.Parts.Add(new BatchPart { MaterialId = part.MaterialId, CountPerUnit = part.CountPerUnit });
        }

        return batch;
    }

    /// <summary>g/mL, as the formula's own page reckons it.</summary>
    private static async Task<decimal?> EstimateAsync(StudioDb db, List<FormulaLine> lines)
    {
        var facts = await AssessedMaterials.OfAsync(db, lines.Select(l => l.MaterialId), CancellationToken.None);
        LineRow[] rows = [.. lines.Select(LineRow.Of)];
        return Worked.DensityOf(Assessed.Lines(rows, Worked.Frozen(rows).Lines, facts), null) is DensityResult.Known known ? known.Density.GramsPerMillilitre : null;
    }

    private static long? FillMilligrams(FormulaSize? size, decimal? density) => size switch
    {
        { NominalMilligrams: { } nominal } => nominal + size.OverfillMilligrams,
        { NominalMillilitres: { } nominal } when density is { } d =>
            FillMass.Of(Volume.FromMillilitres(nominal), new Density(d), Mass.FromMilligrams(size.OverfillMilligrams)).Milligrams,
        _ => null,
    };

    private static Refusal? SetTarget(Command command, Batch batch, PlanBatch request)
    {
        batch.PlannedUnits = request.PlannedUnits;
        if (request.TargetMilligrams is { } target)
        {
            return Resize(batch, target, isPlan: true);
        }

        if (batch.FillMilligrams is not { } fill)
        {
            return new Because(
                $"{batch.ScentName} v{batch.VersionNumber} has no density, so {batch.SizeName} cannot be turned into grams.",
                "Give the density of its materials or of the mixture, or plan by mass.");
        }

        var loss = batch.ExpectedLossPercent / 100m;
        var step = Mass.FromMilligrams(command.Studio.RoundBatchUpToMilligrams);
        return Scaling.WhyNot(request.PlannedUnits!.Value, Mass.FromMilligrams(fill), loss, step) is { } why
            ? new Because(why)
            : Resize(batch, Scaling.ToBottles(request.PlannedUnits.Value, Mass.FromMilligrams(fill), loss, step).Total.Milligrams, isPlan: true);
    }

    /// <summary>Shares a new total over the lines by the formula, to the milligram and exactly.</summary>
    internal static Refusal? Resize(Batch batch, long target, bool isPlan)
    {
        var lines = batch.Lines.OrderBy(l => l.Position).ToList();
        var shares = Scaling.Split(Mass.FromMilligrams(target), [.. lines.Select(l => l.Fraction)]);
        for (var i = 0; i < lines.Count; i++)
        {
            if (shares[i] <= Mass.Zero)
            {
                return new Because($"{lines[i].MaterialName} would be less than 1 mg in a batch of {AmountWords.Grams(target)}.", "Make a larger batch.");
            }

            lines[i].TargetMilligrams = shares[i].Milligrams;
            if (isPlan)
            {
                lines[i].PlannedMilligrams = shares[i].Milligrams;
            }
        }

        batch.TargetMilligrams = target;
        return null;
    }

    private static List<string> Cautions(Batch batch, Scale? scale)
    {
        var least = WeighTolerance.LeastSensible(Mass.FromMilligrams(batch.ReadabilityMilligrams)).Milligrams;
        var cautions = batch.Lines.OrderBy(l => l.Position).Where(l => l.TargetMilligrams < least)
            .Select(l => $"{l.MaterialName}, {AmountWords.Grams(l.TargetMilligrams)}, is small for a scale readable to {AmountWords.Grams(batch.ReadabilityMilligrams)}: below {AmountWords.Grams(least)} one division is more than 1 %.")
            .ToList();
        if (scale is not null)
        {
            cautions.AddRange(batch.Lines.OrderBy(l => l.Position).Where(l => l.TargetMilligrams > scale.CapacityMilligrams)
                .Select(l => $"{l.MaterialName}, {AmountWords.Grams(l.TargetMilligrams)}, is more than {scale.Name} takes ({AmountWords.Grams(scale.CapacityMilligrams)}). Weigh it in parts."));
        }

        return cautions;
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
