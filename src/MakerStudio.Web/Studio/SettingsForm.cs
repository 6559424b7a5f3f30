using MakerStudio.Services.Accounts;

namespace MakerStudio.Web.Studio;

/// <summary>The settings as they are typed; empty numbers are refused, not taken as zero.</summary>
public sealed class SettingsForm
{
    private const decimal MilligramsPerGram = 1000m;

    /// <summary>Below every range, so that an empty field is named by its own rule.</summary>
    private const decimal Nothing = -1m;

    public string? Name { get; set; }
    public string? Address { get; set; }
    public string? Phone { get; set; }
    public string? TimeZone { get; set; }
    public string? Culture { get; set; }
    public decimal? LabourRatePerHour { get; set; }
    public decimal? OverheadPerBatch { get; set; }
    public decimal? OverheadPerUnit { get; set; }
    public decimal? TolerancePercent { get; set; }
    public decimal? ToleranceDivisions { get; set; }

    /// <summary>In grams.</summary>
    public decimal? RoundBatchUpTo { get; set; }
    public uint Version { get; set; }

    public static SettingsForm Of(StudioRow row) => new()
    {
        Name = row.Name, Address = row.Address, Phone = row.Phone, TimeZone = row.TimeZone, Culture = row.Culture, LabourRatePerHour = row.LabourRatePerHour,
        OverheadPerBatch = row.OverheadPerBatch, OverheadPerUnit = row.OverheadPerUnit, TolerancePercent = row.TolerancePercent,
        ToleranceDivisions = row.ToleranceDivisions, RoundBatchUpTo = row.RoundBatchUpToMilligrams / MilligramsPerGram, Version = row.Version,
    };

    public ChangeStudio ToRequest(Guid requestId) => new()
    {
        RequestId = requestId, Name = Name ?? "", Address = Address, Phone = Phone, TimeZone = TimeZone ?? "", Culture = Culture ?? "",
        LabourRatePerHour = LabourRatePerHour ?? Nothing, OverheadPerBatch = OverheadPerBatch ?? Nothing, OverheadPerUnit = OverheadPerUnit ?? Nothing,
        TolerancePercent = TolerancePercent ?? Nothing, ToleranceDivisions = (int)decimal.Clamp(ToleranceDivisions ?? Nothing, Nothing, int.MaxValue),
        RoundBatchUpToMilligrams = (long)decimal.Clamp((RoundBatchUpTo ?? Nothing) * MilligramsPerGram, Nothing, long.MaxValue), Version = Version,
    };
}
