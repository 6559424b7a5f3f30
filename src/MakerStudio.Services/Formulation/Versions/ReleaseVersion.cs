using FluentValidation;
using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Freezes a draft: from here on it can be made, and never changes.</summary>
public sealed record ReleaseVersion : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>The version the page shows.</summary>
    public uint Version { get; set; }

    /// <summary>Why it differs from the last; null keeps what the draft says.</summary>
    public string? Why { get; set; }
}

public sealed class ReleaseVersionValidator : AbstractValidator<ReleaseVersion>
{
    public ReleaseVersionValidator() => RuleFor(r => r.Why).OneLine("The reason", 200);
}

public sealed record VersionReleased(Guid FormulaId, int Number, uint Version);

/// <param name="LineId">The line to mend, or null where the formula as a whole is meant.</param>
public sealed record ReleaseProblem(Guid? LineId, string Problem);

/// <summary>What a draft still lacks to be released.</summary>
public sealed record NotReleasable(int Number, IReadOnlyList<ReleaseProblem> Problems) : Refusal
{
    public override string Happened => $"v{Number} cannot be released yet. {string.Join(' ', Problems.Select(p => p.Problem).Distinct())}";
    public override string Kept => "The draft is kept as it is.";
    public override string ToDo => "Mend the lines, then release it.";
}

/// <summary>The formula would be made of itself.</summary>
public sealed record ConsumesItself(string Name, IReadOnlyList<string> Way) : Refusal
{
    public override string Happened => Way.Count == 1
        ? $"{Name} cannot be made from itself."
        : $"{Name} cannot be made from itself: {string.Join(", which is made of ", Way)}.";

    public override string Kept => "The draft is kept as it is.";
    public override string ToDo => $"Take {Way[0]} out of the lines.";
}

/// <summary>Advice that stops a release until somebody writes down why it does not hold here.</summary>
public sealed record AdviceOpen(int Number, IReadOnlyList<AdviceGiven> Open) : Refusal
{
    public override string Happened =>
        $"v{Number} cannot be released yet: {string.Join(" ", Open.Select(a => $"{a.Title.TrimEnd('.')}."))}";

    public override string Kept => "The draft is kept as it is.";
    public override string ToDo => "Mend the lines, or press “Keep it anyway…” beside the advice and write down why it does not hold here.";
}

public sealed partial class Versions
{
    private static readonly ReleaseVersionValidator ReleaseShape = new();

    public Task<Outcome<VersionReleased>> ReleaseAsync(Actor actor, ReleaseVersion request, CancellationToken cancel = default) =>
        store.RunAsync<ReleaseVersion, VersionReleased>(actor, request, ReleaseShape, async command =>
        {
            var version = await FormulaRows.LockVersionAsync(command.Db, request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This draft");
            }

            if (await WhyNotEditAsync(command, version, request.Version, cancel) is { } stale)
            {
                return stale;
            }

            var formula = version.Formula!;
            if (formula.MakesMaterialId is { } makes)
            {
                await MadeOf.LockAsync(command.Db, cancel);
                if (await MadeOf.WayBackAsync(command.Db, makes, version.Lines.Select(l => l.MaterialId), formula.Id, cancel) is { } way)
                {
                    return new ConsumesItself(formula.Name, way);
                }
            }

            if (WhyNotRelease(version) is { } refusal)
            {
                return refusal;
            }

            if (await OpenAdviceAsync(command.Db, version, cancel) is { Count: > 0 } open)
            {
                return new AdviceOpen(version.Number, open);
            }

            version.Why = Tidy(request.Why) ?? version.Why;
            // The database refuses lines of a released version: they are saved before the state turns.
            await command.Db.SaveChangesAsync(cancel);
            version.State = FormulaState.Released;
            version.ReleasedById = command.PersonId;
            version.ReleasedAt = command.Now;
            command.Record("formula version", version.Id, $"Released {formula.Name} v{version.Number}", Topics.Formulas);
            await command.Db.SaveChangesAsync(cancel);
            return new VersionReleased(formula.Id, version.Number, version.Version);
        }, cancel: cancel);

    /// <summary>Freezes the shares on the lines, or says what stands in the way.</summary>
    private static NotReleasable? WhyNotRelease(FormulaVersion version)
    {
        var lines = version.Lines.OrderBy(l => l.Position).ToArray();
        ReleaseProblem[] problems = [.. lines.SelectMany(ProblemsOf)];
        if (problems.Length > 0)
        {
            return new(version.Number, problems);
        }

        var result = Core.Blending.Formulation.Normalise([.. lines.Select(l => new TypedLine(
            l.Id, l.Amount, l.Basis, DensityOf(l.Material!), l.Material!.Kind == Core.Materials.MaterialKind.Wax, l.Material.DropMilligrams))]);
        if (result is FormulationResult.CannotNormalise cannot)
        {
            return new(version.Number, [.. cannot.Problems.Select(p => new ReleaseProblem(p.LineId, p.Problem))]);
        }

        foreach (var (line, share) in lines.Zip(((FormulationResult.Normalised)result).Lines))
        {
            line.Fraction = share.Fraction;
            line.DensityUsed = DensityOf(line.Material!)?.GramsPerMillilitre;
        }

        ReleaseProblem[] nothing = [.. lines.Where(l => l.Fraction == 0).Select(l =>
            new ReleaseProblem(l.Id, $"Nothing of {l.Material!.Name} goes in. Give it an amount or take the line out."))];
        return nothing.Length > 0 ? new(version.Number, nothing) : null;
    }

    /// <summary>What advises against releasing a version whose shares are worked out, less what somebody gave a reason for.</summary>
    private static async Task<IReadOnlyList<AdviceGiven>> OpenAdviceAsync(StudioDb db, FormulaVersion version, CancellationToken cancel)
    {
        var row = await FormulaRows.Versions(db, v => v.Id == version.Id).AsNoTracking().SingleAsync(cancel);
        var facts = await AssessedMaterials.OfAsync(db, version.Lines.Select(l => l.MaterialId), cancel);
        var lines = version.Lines.OrderBy(l => l.Position)
            .SelectMany(l => facts.Lines(l.Id, l.MaterialId, l.Fraction!.Value, l.Basis)).ToArray();
        var formula = new AssessedFormula(
            ProductKinds.Get(version.Formula!.ProductKind), lines, row.Measured.Facts, EnoughScent: version.Formula.EnoughScentPercent / 100m);
        return [.. AdviceRules.Judge(AdviceBasis.Of(formula, isBeingReleased: true))
            .Where(advice => advice.Kind == AdviceKind.Stop && row.Answer(advice) is null)];
    }

    private static IEnumerable<ReleaseProblem> ProblemsOf(FormulaLine line)
    {
        if (line.Basis == LineBasis.Drops)
        {
            yield return new(line.Id, $"{line.Material!.Name} is typed in drops, which are for trials. Weigh it and type grams or %.");
        }

        if (line.Material!.ArchivedAt is not null)
        {
            yield return new(line.Id, $"{line.Material.Name} is put away in the storeroom. Take it out there or choose another.");
        }

        if (line.Material.StockedIn != StockUnit.Gram)
        {
            yield return new(line.Id, $"{line.Material.Name} is counted in pieces and cannot be weighed.");
        }
    }

    private static Density? DensityOf(Material material) =>
        Density.WherePossible(material.Density);
}
