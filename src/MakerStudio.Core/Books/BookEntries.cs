using MakerStudio.Core.Finished;

namespace MakerStudio.Core.Books;

/// <summary>
/// A movement of the ledger as the books see it. In with a value: received or found. In from a batch without a value:
/// made by it, at what it cost. In from a batch with a value: given back by it. Out to a batch or an assembly of kits:
/// used by it. Any other out is expensed.
/// </summary>
/// <param name="Id">Orders movements of one moment.</param>
/// <param name="Quantity">Above 0 came in, below 0 went out; in the finest unit kept.</param>
/// <param name="Value">Of the whole quantity, 0 or more.</param>
/// <param name="Reverses">The movement it undoes, of the same material, lot and quantity the other way.</param>
/// <param name="IsPackaging">Of units, and so no part of what can be lost from a vessel.</param>
public sealed record BookMovement(
    long Id, DateTimeOffset At, Guid MaterialId, string Lot, decimal Quantity, decimal? Value = null, Guid? BatchId = null, long? Reverses = null, bool IsPackaging = false);

/// <summary>Labour and overhead charged to a batch.</summary>
/// <param name="Amount">0 or more.</param>
public sealed record BookCharge(DateTimeOffset At, decimal Amount);

/// <summary>Material used ahead of its receipt, at an estimate, until it is matched.</summary>
/// <param name="MatchedAt">From then on the movement of the matched lot counts instead; null while it is open.</param>
public sealed record BookEstimate(DateTimeOffset At, decimal Amount, DateTimeOffset? MatchedAt);

/// <summary>Bulk lost in a way that is not normal.</summary>
/// <param name="Fraction">Part of what was weighed into the batch that is expensed, from 0 to 1.</param>
public sealed record BookLoss(DateTimeOffset At, decimal Fraction);

/// <summary>A batch, or an assembly of kits.</summary>
/// <param name="ClosedAt">When it was filled or given up; from then on what is in no unit and in no lot is expensed.</param>
public sealed record BookBatch(
    Guid Id, IReadOnlyList<BookCharge> Charges, IReadOnlyList<BookEstimate> Estimates, IReadOnlyList<BookLoss> Losses, DateTimeOffset? ClosedAt = null);

/// <summary>Finished units that came or went.</summary>
/// <param name="Id">Orders moves of one moment.</param>
/// <param name="Count">Above 0 came in, below 0 went out. A move that was taken back is written the other way with the same effect.</param>
/// <param name="KitId">The assembly that units went into or came out of.</param>
/// <param name="Kind">Why, for what is expensed.</param>
public sealed record BookUnits(long Id, DateTimeOffset At, Guid BatchId, int Count, BookEffect Effect, Guid? KitId = null, UnitMoveKind? Kind = null);
