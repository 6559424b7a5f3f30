using MakerStudio.Core.Finished;

namespace MakerStudio.Services.Inventory;

/// <summary>Statuses and moves of finished units as people say them.</summary>
public static class GoodsWords
{
    /// <summary>"available": the word in a table and in a sentence.</summary>
    public static string Status(UnitStatus status) => status switch
    {
        UnitStatus.Saleable => "available",
        UnitStatus.OnHold => "on hold",
        UnitStatus.Rejected => "rejected",
        UnitStatus.Retained => "retained",
        UnitStatus.Tester => "tester",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, null),
    };

    /// <summary>"set aside as tester": what happened to the units.</summary>
    public static string Kind(UnitMoveKind kind) => kind switch
    {
        UnitMoveKind.Filled => "filled",
        UnitMoveKind.RejectedAtFilling => "rejected at filling",
        UnitMoveKind.RetainedAtFilling => "kept as retained sample",
        UnitMoveKind.Retain => "kept as retained sample",
        UnitMoveKind.Tester => "opened as tester",
        UnitMoveKind.Gift => "given away",
        UnitMoveKind.Breakage => "broken",
        UnitMoveKind.Discard => "thrown away",
        UnitMoveKind.Hold => "put on hold",
        UnitMoveKind.Release => "released again",
        UnitMoveKind.Reject => "rejected",
        UnitMoveKind.Sale => "sold",
        UnitMoveKind.Dispatch => "sold and sent",
        UnitMoveKind.Return => "came back",
        UnitMoveKind.Place => "brought there",
        UnitMoveKind.ReportSold => "reported sold",
        UnitMoveKind.ReportBroken => "reported broken",
        UnitMoveKind.ReportPaidFor => "broken and paid for",
        UnitMoveKind.TakeBack => "brought back",
        UnitMoveKind.IntoKit => "built into kits",
        UnitMoveKind.KitMade => "kits made",
        UnitMoveKind.KitUndone => "kits taken apart",
        UnitMoveKind.OutOfKit => "back from kits",
        UnitMoveKind.CountedMore => "found when counting",
        UnitMoveKind.CountedLess => "missing when counting",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
