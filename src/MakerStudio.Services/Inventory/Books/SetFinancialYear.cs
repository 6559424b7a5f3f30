using System.Globalization;
using FluentValidation;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// The day on which the financial year begins. Until a method is fixed it is simply set, for all years; after that it
/// changes from its next coming on, the year before it is a short one, and years that are over stay as they were.
/// </summary>
public sealed record SetFinancialYear : StudioRequest
{
    public int Month { get; set; } = 1;
    public int Day { get; set; } = 1;

    /// <summary>Set once what it changes was read: <see cref="Books.YearChangeAsync"/>.</summary>
    public bool IsRead { get; set; }
}

public sealed class SetFinancialYearValidator : AbstractValidator<SetFinancialYear>
{
    public SetFinancialYearValidator()
    {
        RuleFor(r => r.Month).InclusiveBetween(1, 12).WithMessage("A month is from 1 to 12.");
        RuleFor(r => r.Day).InclusiveBetween(1, FinancialYears.LatestStartDay).WithMessage("The year begins on a day from 1 to 28.");
    }
}

/// <summary>What another first day of the year changes, worked out before it is done.</summary>
/// <param name="IsFixed">A method was fixed for some year, so that years that are over stay as they are.</param>
/// <param name="First">First day of the first year that begins on the new day.</param>
/// <param name="Running">The year that holds today, as it is now.</param>
/// <param name="Becomes">The same as it will be.</param>
/// <param name="CutShort">The year that ends before <paramref name="First"/>, where it is shorter than a year; may be the running one.</param>
/// <param name="Moved">Methods chosen for a day that is then no first day of a year.</param>
public sealed record YearChange(bool IsFixed, DateOnly First, FinancialYear Running, FinancialYear Becomes, FinancialYear? CutShort, IReadOnlyList<MovedMethod> Moved)
{
    /// <summary>Whether anything changes at all.</summary>
    public bool IsOne { get; init; } = true;

    /// <summary>In sentences, for the page and the refusal.</summary>
    public IReadOnlyList<string> Says { get; init; } = [];
}

/// <param name="From">As it was chosen.</param>
/// <param name="Holds">From this day on it will hold.</param>
public sealed record MovedMethod(ValuationMethod Method, DateOnly From, DateOnly Holds);

/// <summary>Years with a fixed method exist, and nobody has read yet what the change does to them.</summary>
public sealed record YearsAreFixed(YearChange Change) : Refusal
{
    public override string Happened => "Years with a fixed method exist.";
    public override string ToDo => string.Join(' ', Change.Says.Append("Read this, then say so."));
}

public sealed partial class Books
{
    private static readonly SetFinancialYearValidator YearShape = new();

    /// <summary>Month and day on which years begin, a change that is to come counted.</summary>
    public async Task<(int Month, int Day)> YearStartAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var basis = await BasisAsync(db, store.Clock, cancel);
        return basis.YearChanges is [.., var last] ? (last.Month, last.Day) : (basis.YearMonth, basis.YearDay);
    }

    /// <summary>What it would change if years began on that day; null for a day that is none.</summary>
    public async Task<YearChange?> YearChangeAsync(int month, int day, CancellationToken cancel = default)
    {
        if (!YearShape.Validate(new SetFinancialYear { Month = month, Day = day }).IsValid)
        {
            return null;
        }

        await using var db = await store.ReadAsync(cancel);
        return ChangeOf(await BasisAsync(db, store.Clock, cancel), month, day);
    }

    public Task<Outcome<YearChange>> SetYearAsync(Actor actor, SetFinancialYear request, CancellationToken cancel = default) =>
        store.RunAsync<SetFinancialYear, YearChange>(actor, request, YearShape, async command =>
        {
            await LockAsync(command, cancel);
            var change = ChangeOf(await BasisAsync(command.Db, store.Clock, cancel), request.Month, request.Day);
            if (!change.IsOne)
            {
                return new Because($"The financial year begins on {DayOfYear(request.Month, request.Day)} already.", "Choose another day.");
            }

            if (change.IsFixed && !request.IsRead)
            {
                return new YearsAreFixed(change);
            }

            if (change.IsFixed)
            {
                command.Db.BookYears.Add(new BookYear { First = change.First, PersonId = command.PersonId, At = command.Now });
            }
            else
            {
                var rules = await PriceBook.RulesOf(command, null, cancel);
                (rules.YearMonth, rules.YearDay) = (request.Month, request.Day);
            }

            command.Record("books", null, change.IsFixed
                ? $"The financial year begins on {DayOfYear(request.Month, request.Day)}, from {AmountWords.Day(change.First)} on"
                : $"The financial year begins on {DayOfYear(request.Month, request.Day)}", Topics.Books);
            return change;
        }, ownersOnly: true, cancel);

    /// <summary>Changes that had not begun when another was made are gone.</summary>
    internal static IReadOnlyList<DateOnly> WithStart(IReadOnlyList<DateOnly> changes, DateOnly first, DateOnly said) =>
        [.. changes.Where(c => c <= said), first];

    internal static YearChange ChangeOf(BookBasis basis, int month, int day)
    {
        var running = basis.Years.Of(basis.Today);
        if (basis.Choices.Count == 0)
        {
            var years = new FinancialYears(month, day, basis.Zone);
            var becomes = years.Of(basis.Today);
            return new YearChange(false, becomes.First, running, becomes, null, [])
            {
                IsOne = becomes != running,
                Says = [$"No method is fixed yet, so all years are cut anew: the one that runs becomes {Span(becomes)}. Worth by weighted average of the year goes by the new years; nothing else changes."],
            };
        }

        var first = FinancialYears.NextStart(month, day, basis.Today);
        var after = new FinancialYears(basis.YearMonth, basis.YearDay, basis.Zone, WithStart(basis.YearChanges, first, basis.Today));
        var (shortened, next) = (after.Of(first.AddDays(-1)), after.Of(first));
        var moved = basis.Choices.Where(c => c.First > basis.Today && after.Of(c.First).First != c.First)
            .Select(c => new MovedMethod(c.Method, c.First, after.After(after.Of(c.First)).First)).ToList();
        var change = new YearChange(true, first, running, after.Of(basis.Today), shortened == basis.Years.Of(shortened.First) ? null : shortened, moved);
        return change with { IsOne = change.CutShort is not null || moved.Count > 0 || basis.Years.Of(first) != next, Says = [.. SaysOf(change, next, basis)] };
    }

    private static IEnumerable<string> SaysOf(YearChange change, FinancialYear next, BookBasis basis)
    {
        var endsEarly = change.CutShort?.First == change.Running.First;
        yield return $"Years that are over{(endsEarly ? "" : ", and the one that runs,")} keep their days, their method and their sums.";
        if (change.CutShort is { } cut)
        {
            yield return $"{(endsEarly ? "The year that runs ends early" : "The year after it is a short one")}: {Span(cut)}, {cut.Days} days, valued by {MethodIn(cut, basis)}.";
        }

        yield return $"Then years begin on {DayOfYear(change.First.Month, change.First.Day)}: the first is {Span(next)}, valued by {MethodIn(next, basis)}.";
        foreach (var moved in change.Moved)
        {
            yield return $"{BookWords.Method(moved.Method)}, chosen from {AmountWords.Day(moved.From)} on, then holds from {AmountWords.Day(moved.Holds)} on.";
        }
    }

    private static string MethodIn(FinancialYear year, BookBasis basis) => BookWords.Method(MethodOfYears.In(year, basis.Choices)).ToLower(CultureInfo.CurrentCulture);

    private static string Span(FinancialYear year) => $"{AmountWords.Day(year.First)} to {AmountWords.Day(year.Last)}";

    /// <summary>"6 April". The year is any that is no leap year; 29 February begins none.</summary>
    internal static string DayOfYear(int month, int day) => new DateOnly(2001, month, day).ToString("d MMMM", CultureInfo.CurrentCulture);
}
