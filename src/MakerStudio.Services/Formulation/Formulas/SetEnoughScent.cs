using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Writes down from which share on more scent stopped helping in the studio's own trials.</summary>
public sealed record SetEnoughScent : StudioRequest
{
    public Guid FormulaId { get; set; }

    /// <summary>Per cent of what the kind's load is a share of; null where it was not tried.</summary>
    public decimal? Percent { get; set; }

    /// <summary>What trials showed it.</summary>
    public string? Note { get; set; }

    /// <summary>The formula row's version the form was opened with.</summary>
    public uint Version { get; set; }
}

public sealed class SetEnoughScentValidator : AbstractValidator<SetEnoughScent>
{
    public SetEnoughScentValidator()
    {
        RuleFor(r => r.Percent).Must(p => p is null or (> 0 and <= 100)).WithMessage("Enough scent is a share above 0 and up to 100 %.");
        RuleFor(r => r.Note).OneLine("What the trials showed", 200);
    }
}

public sealed partial class Formulas
{
    private static readonly SetEnoughScentValidator EnoughShape = new();

    public Task<Outcome<Nothing>> SetEnoughScentAsync(Actor actor, SetEnoughScent request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, EnoughShape, async command =>
        {
            var formula = await command.Db.Formulas.SingleOrDefaultAsync(f => f.Id == request.FormulaId, cancel);
            if (formula is null)
            {
                return new NotFound("This formula");
            }

            command.ExpectVersion(formula, request.Version);
            formula.EnoughScentPercent = request.Percent;
            formula.EnoughScentNote = request.Percent is null || string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim();
            command.Record("formula", formula.Id, request.Percent is { } p ? $"Found {p} % to be enough scent in {formula.Name}" : $"Took back how much scent is enough in {formula.Name}", Topics.Formulas);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("this formula", "Somebody");
        }, cancel: cancel);
}
