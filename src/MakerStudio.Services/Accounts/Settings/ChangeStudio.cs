using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Changes the studio's settings. Owners only.</summary>
public sealed record ChangeStudio : StudioRequest
{
    public string Name { get; set; } = "";
    public string? Address { get; set; }
    public string? Phone { get; set; }
    public string TimeZone { get; set; } = "";
    public string Culture { get; set; } = "";
    public decimal LabourRatePerHour { get; set; }
    public decimal OverheadPerBatch { get; set; }
    public decimal OverheadPerUnit { get; set; }
    public decimal TolerancePercent { get; set; }
    public int ToleranceDivisions { get; set; }
    public long RoundBatchUpToMilligrams { get; set; }

    /// <summary>The version the form was opened with.</summary>
    public uint Version { get; set; }
}

public sealed class ChangeStudioValidator : AbstractValidator<ChangeStudio>
{
    public ChangeStudioValidator()
    {
        RuleFor(r => r.Name).NotEmpty().WithMessage("The studio needs a name.").MaximumLength(120);
        RuleFor(r => r.TimeZone).IsTimeZone();
        RuleFor(r => r.Culture).IsCulture();
        RuleFor(r => r.LabourRatePerHour).InclusiveBetween(0, 100_000).WithMessage("Paid time is from 0 to 100,000 an hour.");
        RuleFor(r => r.OverheadPerBatch).InclusiveBetween(0, 1_000_000).WithMessage("Overhead a batch is from 0 to 1,000,000.");
        RuleFor(r => r.OverheadPerUnit).InclusiveBetween(0, 1_000_000).WithMessage("Overhead a unit is from 0 to 1,000,000.");
        RuleFor(r => r.TolerancePercent).InclusiveBetween(0, 20).WithMessage("Tolerance is from 0 to 20 % of the target.");
        RuleFor(r => r.ToleranceDivisions).InclusiveBetween(1, 100).WithMessage("Tolerance is from 1 to 100 scale divisions.");
        RuleFor(r => r.RoundBatchUpToMilligrams).InclusiveBetween(1, 100_000_000).WithMessage("Batches are rounded up to between 1 mg and 100 kg.");
    }
}

public sealed partial class StudioSettings
{
    private static readonly ChangeStudioValidator ChangeStudioShape = new();

    public Task<Outcome<Nothing>> ChangeAsync(Actor actor, ChangeStudio request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, ChangeStudioShape, async command =>
        {
            var studio = await command.Db.Studio.SingleAsync(cancel);
            command.ExpectVersion(studio, request.Version);
            studio.Name = request.Name.Trim();
            studio.Address = request.Address;
            studio.Phone = request.Phone;
            studio.TimeZone = request.TimeZone;
            studio.Culture = request.Culture;
            studio.LabourRatePerHour = request.LabourRatePerHour;
            studio.OverheadPerBatch = request.OverheadPerBatch;
            studio.OverheadPerUnit = request.OverheadPerUnit;
            studio.TolerancePercent = request.TolerancePercent;
            studio.ToleranceDivisions = request.ToleranceDivisions;
            studio.RoundBatchUpToMilligrams = request.RoundBatchUpToMilligrams;
            command.Record("studio", null, "Changed the studio's settings", Topics.Studio);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("the settings", "Somebody");
        }, ownersOnly: true, cancel);
}
