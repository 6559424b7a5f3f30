using FluentValidation;
using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>
/// Writes down what was measured of the finished mixture; null is "not measured", and the estimate holds. Also on a
/// released version: a measurement is no change of the formula. Batches planned before keep the density they were
/// planned with.
/// </summary>
public sealed record MeasureVersion : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>At 20 °C.</summary>
    public decimal? GramsPerMillilitre { get; set; }

    /// <summary>°C, closed cup.</summary>
    public decimal? FlashPoint { get; set; }

    /// <summary>°C, initial.</summary>
    public decimal? BoilingPoint { get; set; }

    /// <summary>By the UN test L.2.</summary>
    public bool? SustainsCombustion { get; set; }

    /// <summary>mm²/s at 40 °C, kinematic.</summary>
    public decimal? Viscosity { get; set; }
    public decimal? Ph { get; set; }

    /// <summary>The version the page shows.</summary>
    public uint Version { get; set; }
}

public sealed class MeasureVersionValidator : AbstractValidator<MeasureVersion>
{
    /// <summary>°C; own bounds: no liquid of the trade flashes or boils beyond them, so a figure there is a slip.</summary>
    private const decimal Coldest = -60m;
    private const decimal Hottest = 500m;

    /// <summary>mm²/s; own bound, thicker than honey.</summary>
    private const decimal Thickest = 100_000m;
    private const decimal HighestPh = 14m;

    public MeasureVersionValidator()
    {
        RuleFor(r => r.GramsPerMillilitre).Must(d => d is null || Density.IsPossible(d.Value)).WithMessage("A density lies between 0.1 and 5 g/mL.");
        RuleFor(r => r.FlashPoint).InclusiveBetween(Coldest, Hottest).WithMessage("A flash point lies between −60 and 500 °C.");
        RuleFor(r => r.BoilingPoint).InclusiveBetween(Coldest, Hottest).WithMessage("A boiling point lies between −60 and 500 °C.");
        RuleFor(r => r.Viscosity).Must(v => v is null or (> 0 and <= Thickest)).WithMessage("A viscosity lies above 0 and up to 100,000 mm²/s.");
        RuleFor(r => r.Ph).InclusiveBetween(0, HighestPh).WithMessage("A pH lies between 0 and 14.");
    }
}

public sealed partial class Versions
{
    private static readonly MeasureVersionValidator MeasureShape = new();

    /// <summary>Answers with the version to send next.</summary>
    public Task<Outcome<DraftKept>> MeasureAsync(Actor actor, MeasureVersion request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, MeasureShape, async command =>
        {
            var version = await command.Db.FormulaVersions.Include(v => v.Formula).SingleOrDefaultAsync(v => v.Id == request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This version");
            }

            command.ExpectVersion(version, request.Version);
            (version.MeasuredDensity, version.MeasuredFlashPoint, version.MeasuredBoilingPoint) = (request.GramsPerMillilitre, request.FlashPoint, request.BoilingPoint);
            (version.SustainsCombustion, version.MeasuredViscosity, version.MeasuredPh) = (request.SustainsCombustion, request.Viscosity, request.Ph);
            command.Db.Entry(version).Property(v => v.MeasuredDensity).IsModified = true;
            command.Record("formula version", version.Id, $"{Said(request)} {version.Formula!.Name} v{version.Number}", Topics.Formulas);
            return await command.TrySaveAsync()
                ? new DraftKept(version.Version, version.KeptAt)
                : (Outcome<DraftKept>)new Stale("this version", await ChangedByAsync(command, version.Id, cancel));
        }, cancel: cancel);

    private static string Said(MeasureVersion request)
    {
        string?[] all =
        [
            request.GramsPerMillilitre is { } density ? $"{density} g/mL" : null,
            request.FlashPoint is { } flash ? $"flash point {flash} °C" : null,
            request.BoilingPoint is { } boils ? $"boiling point {boils} °C" : null,
            request.SustainsCombustion switch { true => "sustains combustion", false => "does not sustain combustion", null => null },
            request.Viscosity is { } viscosity ? $"{viscosity} mm²/s" : null,
            request.Ph is { } ph ? $"pH {ph}" : null,
        ];
        var measured = string.Join(", ", all.OfType<string>());
        return measured.Length == 0 ? "Took back what was measured on" : $"Measured {measured} on";
    }
}
