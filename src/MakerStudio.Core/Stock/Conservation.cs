using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Stock;

/// <summary>Where the studio's money in goods came from and where it is, at one moment; not rounded.</summary>
/// <param name="Received">Landed cost of all that was received or found, at the value it was taken in with.</param>
/// <param name="Conversion">Labour and overhead charged to batches.</param>
/// <param name="Materials">Materials and packaging on the shelf.</param>
/// <param name="WorkInProgress">Batches weighed and not filled.</param>
/// <param name="Finished">Finished units, wherever they are: here, or on consignment and not sold.</param>
/// <param name="CostOfSales">Of units sold.</param>
/// <param name="Expensed">Abnormal losses, testers, gifts, breakage, write-downs.</param>
public sealed record ValueParts(
    decimal Received,
    decimal Conversion,
    decimal Materials,
    decimal WorkInProgress,
    decimal Finished,
    decimal CostOfSales,
    decimal Expensed);

/// <param name="Difference">What went in less what is found again; above 0 money is missing.</param>
/// <param name="Shown">The parts in whole coins, so that both sides add up as they are printed.</param>
public sealed record ConservationCheck(ValueParts Parts, decimal In, decimal Out, decimal Difference, bool Holds, ValueParts Shown);

/// <summary>
/// Nothing is lost: what was received, with the labour and overhead put into it, equals stock + work in progress +
/// finished + cost of sales + what was expensed.
/// </summary>
public static class Conservation
{
    /// <summary>
    /// The most that unit costs kept as quotients may leave behind, in money: below any coin, above the noise of the
    /// last digits of a long history. Values drawn from a <see cref="ValuePool"/> leave nothing behind at all.
    /// </summary>
    public const decimal Noise = 0.000001m;

    /// <param name="moneyDecimals">Decimals of the coin, 0 to 6.</param>
    public static ConservationCheck Check(ValueParts parts, int moneyDecimals = 2)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var into = parts.Received + parts.Conversion;
        decimal[] found = [parts.Materials, parts.WorkInProgress, parts.Finished, parts.CostOfSales, parts.Expensed];
        var difference = into - found.Sum();
        var holds = Math.Abs(difference) <= Noise;
        var left = Apportionment.RoundTogether([parts.Received, parts.Conversion], moneyDecimals);
        // Noise around half a coin must not print two sums where there is one.
        var right = Apportionment.RoundTogether(found, moneyDecimals, holds ? into : null);
        return new ConservationCheck(
            parts, into, found.Sum(), difference, holds,
            new ValueParts(left[0], left[1], right[0], right[1], right[2], right[3], right[4]));
    }
}
