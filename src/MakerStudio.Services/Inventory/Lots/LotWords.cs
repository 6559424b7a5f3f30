using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>The words for a lot's status, movements and reasons.</summary>
public static class LotWords
{
    public static string Status(LotStatus status) => status switch
    {
        LotStatus.Quarantine => "Quarantine",
        LotStatus.Released => "Released",
        LotStatus.OnHold => "On hold",
        LotStatus.Rejected => "Rejected",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, null),
    };

    public static string Kind(MovementKind kind) => kind switch
    {
        MovementKind.Receipt => "Receipt",
        MovementKind.Opening => "Opening stock",
        MovementKind.Use => "Use",
        MovementKind.Packaging => "Filling",
        MovementKind.Adjustment => "Adjustment",
        MovementKind.Return => "Return",
        MovementKind.Made => "Made",
        MovementKind.Reversal => "Reversal",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public static string Reason(AdjustmentReason reason) => reason switch
    {
        AdjustmentReason.Count => "Count",
        AdjustmentReason.Spill => "Spill",
        AdjustmentReason.Evaporation => "Evaporation",
        AdjustmentReason.Breakage => "Breakage",
        AdjustmentReason.Sample => "Sample",
        AdjustmentReason.Tester => "Tester",
        AdjustmentReason.Gift => "Gift",
        AdjustmentReason.TheftOrUnknown => "Theft or unknown",
        AdjustmentReason.CorrectionOfEntry => "Correction of entry",
        AdjustmentReason.Disposal => "Disposal",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };

    /// <summary>Why a lot may not be weighed from, in one sentence.</summary>
    public static string WhyNot(string code, LotRefusal why) => why switch
    {
        LotRefusal.Rejected => $"{code} is rejected; that is final.",
        LotRefusal.NotReleased not => $"{code} is {(not.Status == LotStatus.OnHold ? "on hold" : "in quarantine")}.",
        LotRefusal.Expired expired => $"{code} was good until {AmountWords.Day(expired.On)}.",
        LotRefusal.Empty => $"{code} is used up.",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };

    /// <summary>The same reason as it stands beside a lot in a list.</summary>
    public static string WhyNotInList(LotRefusal why) => why switch
    {
        LotRefusal.Rejected => "rejected",
        LotRefusal.NotReleased not => not.Status == LotStatus.OnHold ? "on hold" : "in quarantine",
        LotRefusal.Expired expired => $"date passed {AmountWords.Day(expired.On)}",
        LotRefusal.Empty => "nothing left",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };
}
