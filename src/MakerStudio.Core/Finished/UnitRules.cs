namespace MakerStudio.Core.Finished;

/// <summary>Why finished units change place or status.</summary>
public enum UnitMoveKind
{
    Filled,
    RejectedAtFilling,
    RetainedAtFilling,

    /// <summary>A sample kept later, out of what could be sold.</summary>
    Retain,
    Tester,
    Gift,
    Breakage,

    /// <summary>Thrown away: a retained sample past its time, a tester used up, a reject.</summary>
    Discard,
    Hold,
    Release,

    /// <summary>Found on looking closer to be unfit.</summary>
    Reject,

    /// <summary>Over the counter or at a stall.</summary>
    Sale,

    /// <summary>Sent to a customer or to a shop that bought.</summary>
    Dispatch,

    /// <summary>Came back from whoever bought it; waits on hold.</summary>
    Return,

    /// <summary>Placed with a shop on consignment: still ours.</summary>
    Place,

    /// <summary>The shop reports a sale. Nothing there counts as sold before.</summary>
    ReportSold,
    ReportBroken,

    /// <summary>Broken at the shop, and the shop pays for it.</summary>
    ReportPaidFor,
    TakeBack,
    IntoKit,
    KitMade,
    KitUndone,
    OutOfKit,
    CountedMore,
    CountedLess,
}

/// <summary>What a move does to the money in finished stock.</summary>
public enum BookEffect
{
    /// <summary>The money moves along with the units, or there was none in them.</summary>
    None,

    /// <summary>From work in progress into finished stock.</summary>
    FromBatch,
    CostOfSales,

    /// <summary>Out of cost of sales, back into stock.</summary>
    BackFromSale,
    Expensed,

    /// <summary>Between a kit and the units in it.</summary>
    Kit,

    /// <summary>Found on counting: in at the cost of its batch.</summary>
    Found,
}

/// <summary>Where a move may begin or end.</summary>
public enum PlaceRule
{
    /// <summary>Comes from outside, or leaves.</summary>
    Outside,
    Here,
    Shop,

    /// <summary>Here, or with the shop that is named.</summary>
    HereOrShop,
}

/// <summary>One kind of move: from which status and place, to which.</summary>
/// <param name="From">Empty when units come in.</param>
/// <param name="To">Null when they leave.</param>
public sealed record UnitRule(
    UnitMoveKind Kind, IReadOnlyList<UnitStatus> From, PlaceRule FromPlace, UnitStatus? To, PlaceRule ToPlace, BookEffect Effect)
{
    /// <summary>Why the move is not one of this kind, in a sentence; null when it is.</summary>
    public string? WhyNot(UnitMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        var needsShop = FromPlace == PlaceRule.Shop || ToPlace == PlaceRule.Shop;
        var mayHaveShop = needsShop || FromPlace == PlaceRule.HereOrShop || ToPlace == PlaceRule.HereOrShop;
        return move switch
        {
            { Count: < 1 } => "At least one unit moves.",
            { ShopId: null } when needsShop => "Say which shop.",
            { ShopId: not null } when !mayHaveShop => "This is done with units that are here; take them back from the shop first.",
            { Status: { } status } when !From.Contains(status) => $"{Name(status)} units cannot take this way.",
            { Status: null } when From.Count > 1 => "Say which units: saleable, on hold, or another status.",
            _ => null,
        };
    }

    internal UnitsOf? Source(UnitMove move) => From.Count == 0
        ? null
        : new UnitsOf(move.BatchId, PlaceOf(FromPlace, move), move.Status ?? From[0]);

    internal UnitsOf? Target(UnitMove move) => To is { } to ? new UnitsOf(move.BatchId, PlaceOf(ToPlace, move), to) : null;

    private static UnitPlace PlaceOf(PlaceRule rule, UnitMove move) => rule == PlaceRule.Here ? UnitPlace.Here : new UnitPlace(move.ShopId);

    private static string Name(UnitStatus status) => status switch
    {
        UnitStatus.OnHold => "Held",
        UnitStatus.Tester => "Tester",
        _ => status.ToString(),
    };
}

/// <summary>
/// Every way a finished unit may take. Money lies in saleable and held units only: rejects and samples set aside at
/// filling are carried by the units left to sell, so what leaves saleable stock later is expensed.
/// </summary>
public static class UnitRules
{
    public static IReadOnlyList<UnitRule> All { get; } =
    [
        In(UnitMoveKind.Filled, UnitStatus.Saleable, BookEffect.FromBatch),
        In(UnitMoveKind.RejectedAtFilling, UnitStatus.Rejected, BookEffect.None),
        In(UnitMoveKind.RetainedAtFilling, UnitStatus.Retained, BookEffect.None),
        new(UnitMoveKind.Retain, [UnitStatus.Saleable], PlaceRule.Here, UnitStatus.Retained, PlaceRule.Here, BookEffect.Expensed),
        new(UnitMoveKind.Tester, [UnitStatus.Saleable], PlaceRule.HereOrShop, UnitStatus.Tester, PlaceRule.HereOrShop, BookEffect.Expensed),
        Out(UnitMoveKind.Gift, PlaceRule.Here, BookEffect.Expensed, UnitStatus.Saleable),
        Out(UnitMoveKind.Breakage, PlaceRule.Here, BookEffect.Expensed, UnitStatus.Saleable, UnitStatus.OnHold),
        Out(UnitMoveKind.Discard, PlaceRule.HereOrShop, BookEffect.None, UnitStatus.Rejected, UnitStatus.Retained, UnitStatus.Tester),
        new(UnitMoveKind.Hold, [UnitStatus.Saleable], PlaceRule.HereOrShop, UnitStatus.OnHold, PlaceRule.HereOrShop, BookEffect.None),
        new(UnitMoveKind.Release, [UnitStatus.OnHold], PlaceRule.HereOrShop, UnitStatus.Saleable, PlaceRule.HereOrShop, BookEffect.None),
        new(UnitMoveKind.Reject, [UnitStatus.Saleable, UnitStatus.OnHold], PlaceRule.Here, UnitStatus.Rejected, PlaceRule.Here, BookEffect.Expensed),
        Out(UnitMoveKind.Sale, PlaceRule.Here, BookEffect.CostOfSales, UnitStatus.Saleable),
        Out(UnitMoveKind.Dispatch, PlaceRule.Here, BookEffect.CostOfSales, UnitStatus.Saleable),
        In(UnitMoveKind.Return, UnitStatus.OnHold, BookEffect.BackFromSale),
        new(UnitMoveKind.Place, [UnitStatus.Saleable], PlaceRule.Here, UnitStatus.Saleable, PlaceRule.Shop, BookEffect.None),
        Out(UnitMoveKind.ReportSold, PlaceRule.Shop, BookEffect.CostOfSales, UnitStatus.Saleable),
        Out(UnitMoveKind.ReportBroken, PlaceRule.Shop, BookEffect.Expensed, UnitStatus.Saleable, UnitStatus.OnHold),
        Out(UnitMoveKind.ReportPaidFor, PlaceRule.Shop, BookEffect.CostOfSales, UnitStatus.Saleable, UnitStatus.OnHold),
        new(UnitMoveKind.TakeBack, [UnitStatus.Saleable], PlaceRule.Shop, UnitStatus.Saleable, PlaceRule.Here, BookEffect.None),
        Out(UnitMoveKind.IntoKit, PlaceRule.Here, BookEffect.Kit, UnitStatus.Saleable),
        In(UnitMoveKind.KitMade, UnitStatus.Saleable, BookEffect.Kit),
        Out(UnitMoveKind.KitUndone, PlaceRule.Here, BookEffect.Kit, UnitStatus.Saleable),
        In(UnitMoveKind.OutOfKit, UnitStatus.Saleable, BookEffect.Kit),
        In(UnitMoveKind.CountedMore, UnitStatus.Saleable, BookEffect.Found),
        Out(UnitMoveKind.CountedLess, PlaceRule.HereOrShop, BookEffect.Expensed, UnitStatus.Saleable, UnitStatus.OnHold),
    ];

    public static UnitRule For(UnitMoveKind kind) => All.Single(r => r.Kind == kind);

    /// <summary>Whether money lies in units of a status.</summary>
    public static bool CarriesValue(UnitStatus status) => status is UnitStatus.Saleable or UnitStatus.OnHold;

    private static UnitRule In(UnitMoveKind kind, UnitStatus to, BookEffect effect) => new(kind, [], PlaceRule.Outside, to, PlaceRule.Here, effect);

    private static UnitRule Out(UnitMoveKind kind, PlaceRule from, BookEffect effect, params UnitStatus[] statuses) =>
        new(kind, statuses, from, null, PlaceRule.Outside, effect);
}
