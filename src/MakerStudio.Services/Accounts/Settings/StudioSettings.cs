using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Studio-wide settings: one file a use case in this folder.</summary>
public sealed partial class StudioSettings(StudioStore store)
{
    /// <summary>The settings, or null before the first person has set the studio up.</summary>
    public async Task<StudioRow?> ReadAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Studio.Select(s => new StudioRow(
            s.Name, s.Address, s.Phone, s.TimeZone, s.Culture, s.Currency, s.LabourRatePerHour, s.OverheadPerBatch, s.OverheadPerUnit,
            s.TolerancePercent, s.ToleranceDivisions, s.RoundBatchUpToMilligrams, s.IsSample, s.Version)).SingleOrDefaultAsync(cancel);
    }
}

public sealed record StudioRow(
    string Name, string? Address, string? Phone, string TimeZone, string Culture, string Currency,
    decimal LabourRatePerHour, decimal OverheadPerBatch, decimal OverheadPerUnit,
    decimal TolerancePercent, int ToleranceDivisions, long RoundBatchUpToMilligrams, bool IsSample, uint Version);
