using FluentValidation;
using MakerStudio.Core.Advice;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>
/// Goes ahead without a piece of advice, for a reason that stands beside it from then on. Also on a released version,
/// where new facts about a material can bring new advice.
/// </summary>
public sealed record OverrideAdvice : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>The advice as it stood on the page: its rule, what it is about, its kind and the figure that decided.</summary>
    public string Rule { get; set; } = "";
    public string Subject { get; set; } = "";
    public AdviceKind Kind { get; set; }
    public decimal? Measure { get; set; }

    /// <summary>What it says in short, for the record of who did what.</summary>
    public string Title { get; set; } = "";
    public string? Reason { get; set; }
}

public sealed class OverrideAdviceValidator : AbstractValidator<OverrideAdvice>
{
    public OverrideAdviceValidator()
    {
        RuleFor(r => r.Reason).OneLine("The reason", Versions.LongestReason);
        RuleFor(r => r.Reason).Must(reason => !string.IsNullOrWhiteSpace(reason)).WithMessage("The record needs a reason. A few words are enough.");
        RuleFor(r => r.Rule).Must(rule => AdviceRules.All.Any(known => known.Key == rule)).WithMessage("No rule of advice has this name. Reload the page.");
        RuleFor(r => r.Kind).IsInEnum().WithMessage("Say what kind of advice it is.");
    }
}

public sealed record AdviceOverridden(Guid OverrideId);

public sealed partial class Versions
{
    /// <summary>Letters of a reason.</summary>
    public const int LongestReason = 200;

    private static readonly OverrideAdviceValidator OverrideShape = new();

    public Task<Outcome<AdviceOverridden>> OverrideAsync(Actor actor, OverrideAdvice request, CancellationToken cancel = default) =>
        store.RunAsync<OverrideAdvice, AdviceOverridden>(actor, request, OverrideShape, async command =>
        {
            var version = await command.Db.FormulaVersions.Include(v => v.Formula).SingleOrDefaultAsync(v => v.Id == request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This version");
            }

            var made = new AdviceOverride
            {
                FormulaVersionId = version.Id, Rule = request.Rule, Subject = request.Subject, Kind = request.Kind, Measure = request.Measure,
                Reason = request.Reason!.Trim(), PersonId = command.PersonId, At = command.Now,
            };
            command.Db.AdviceOverrides.Add(made);
            command.Record("formula version", version.Id, $"Kept {version.Formula!.Name} v{version.Number} in spite of “{request.Title}”: {made.Reason}", Topics.Formulas);
            return new AdviceOverridden(made.Id);
        }, cancel: cancel);
}
