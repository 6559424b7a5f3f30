using FluentValidation;
using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>
/// Writes down the density of the finished mixture as measured. Also on a released version: it is a measurement, not a
/// change of the formula. Batches planned before keep the density they were planned with.
/// </summary>
public sealed record SetDensity : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>g/mL; null goes back to the estimate.</summary>
    public decimal? GramsPerMillilitre { get; set; }

    /// <summary>The version the page shows.</summary>
    public uint Version { get; set; }
}

public sealed class SetDensityValidator : AbstractValidator<SetDensity>
{
    public SetDensityValidator() => RuleFor(r => r.GramsPerMillilitre)
        .Must(d => d is null || Density.IsPossible(d.Value)).WithMessage("A density lies between 0.1 and 5 g/mL.");
}

public sealed partial class Versions
{
    private static readonly SetDensityValidator DensityShape = new();

    /// <summary>Answers with the version to send next.</summary>
    public Task<Outcome<DraftKept>> SetDensityAsync(Actor actor, SetDensity request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, DensityShape, async command =>
        {
            var version = await command.Db.FormulaVersions.Include(v => v.Formula).SingleOrDefaultAsync(v => v.Id == request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This version");
            }

            command.ExpectVersion(version, request.Version);
            version.MeasuredDensity = request.GramsPerMillilitre;
            command.Db.Entry(version).Property(v => v.MeasuredDensity).IsModified = true;
            var said = request.GramsPerMillilitre is { } d ? $"Measured {d} g/mL on" : "Took back the measured density of";
            command.Record("formula version", version.Id, $"{said} {version.Formula!.Name} v{version.Number}", Topics.Formulas);
            return await command.TrySaveAsync()
                ? new DraftKept(version.Version, version.KeptAt)
                : (Outcome<DraftKept>)new Stale("this version", await ChangedByAsync(command, version.Id, cancel));
        }, cancel: cancel);
}
