namespace MakerStudio.Core.Stock;

/// <param name="First">First day of the financial year from which on the method holds.</param>
public sealed record MethodFrom(DateOnly First, ValuationMethod Method);

/// <summary>
/// The valuation method is fixed for a financial year: IAS 2 wants one formula used for goods of one kind, and a sum
/// that changes its method in mid-year compares with nothing. A year without a choice of its own goes on as the one
/// before. A change values the opening stock of its year anew under the new method; the difference is to be shown.
/// </summary>
public static class MethodOfYears
{
    /// <summary>Until a studio chooses.</summary>
    public const ValuationMethod Usual = ValuationMethod.Fifo;

    public static ValuationMethod In(FinancialYear year, IEnumerable<MethodFrom> choices) =>
        Latest(year, choices)?.Method ?? Usual;

    /// <summary>Why a method cannot be chosen for a year, in a sentence; null when it can.</summary>
    /// <param name="current">The year that holds today.</param>
    public static string? WhyNot(FinancialYear year, ValuationMethod method, FinancialYear current, IReadOnlyList<MethodFrom> choices)
    {
        ArgumentNullException.ThrowIfNull(choices);
        if (year.First < current.First)
        {
            return FormattableString.Invariant($"The year from {year.First:yyyy-MM-dd} is over; its method stays.");
        }

        var isFixed = year == current && Latest(year, choices) is { } chosen && chosen.Method != method;
        return isFixed
            ? FormattableString.Invariant($"The method is fixed for the year from {year.First:yyyy-MM-dd}; choose another from {year.Last.AddDays(1):yyyy-MM-dd} on.")
            : null;
    }

    private static MethodFrom? Latest(FinancialYear year, IEnumerable<MethodFrom> choices) =>
        choices.Where(c => c.First <= year.First).MaxBy(c => c.First);
}
