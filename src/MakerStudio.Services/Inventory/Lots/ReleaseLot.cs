using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>Releases a lot from quarantine for use.</summary>
public sealed record ReleaseLot : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>What was looked at; null says that the papers are complete.</summary>
    public string? Note { get; set; }
}

/// <summary>A paper the lot needs is not filed.</summary>
public sealed record PapersMissing(string Code, IReadOnlyList<PaperKind> Papers) : Refusal
{
    public override string Happened => $"{Code} cannot be released: {LotPapers.Words(Papers)} missing.";
    public override string ToDo => Papers.Contains(PaperKind.CertificateOfAnalysis)
        ? "Attach the paper: a CoA to this lot, the others to the material. Then release it."
        : "File the paper with the material, then release the lot.";
}

/// <summary>The lot was rejected, and that is final.</summary>
public sealed record RejectedIsFinal(string Code, string? Reason) : Refusal
{
    public override string Happened => $"{Code} is rejected{(Reason is null ? "" : $" ({Reason})")}; that is final.";
    public override string ToDo => "Send it back, or adjust it out with the reason disposal.";
}

public sealed partial class Lots
{
    public Task<Outcome<Nothing>> ReleaseAsync(Actor actor, ReleaseLot request, CancellationToken cancel = default) =>
        store.RunAsync<ReleaseLot, Nothing>(actor, request, null, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            switch (lot.Status)
            {
                case LotStatus.Rejected:
                    return new RejectedIsFinal(lot.Code, lot.StatusReason);
                case LotStatus.Released:
                    return new Because($"{lot.Code} is released already.");
                case LotStatus.OnHold:
                    return new Because($"{lot.Code} is on hold: {lot.StatusReason}.", "Lift the hold instead; that keeps its reason beside it.");
            }

            if (await LotPapers.MissingAsync(command.Db, lot) is { Count: > 0 } missing)
            {
                return new PapersMissing(lot.Code, missing);
            }

            LotLog.ChangeStatus(command, lot, LotStatus.Released, string.IsNullOrWhiteSpace(request.Note) ? "Papers complete" : request.Note.Trim());
            return Nothing.Value;
        }, cancel: cancel);
}
