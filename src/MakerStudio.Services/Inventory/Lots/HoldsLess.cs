using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>A lot does not hold what was to be taken.</summary>
/// <param name="OnHand">Milligrams or pieces.</param>
/// <param name="Asked">Milligrams or pieces.</param>
public sealed record HoldsLess(string Code, long OnHand, long Asked, StockUnit Unit) : Refusal
{
    public long Missing => Asked - OnHand;

    public override string Happened =>
        $"{Code} holds {AmountWords.Amount(OnHand, Unit)} and {AmountWords.Amount(Asked, Unit)} was to go: short {AmountWords.Amount(Missing, Unit)}.";
    public override string ToDo => "Take less, or count the lot first.";
}
