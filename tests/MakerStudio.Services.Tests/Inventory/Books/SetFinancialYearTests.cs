using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Books;

using Books = Services.Inventory.Books;

/// <summary>Today is 26 Oct 2026.</summary>
public class SetFinancialYearTests
{
    private static readonly SetFinancialYear April = new() { Month = 4, Day = 6 };

    [Fact]
    public async Task WithoutAFixedMethod_AllYearsAreCutAnew()
    {
        await using var studio = await TestStudio.NewAsync();
        var books = studio.Get<Books>();
        var before = (await books.YearChangeAsync(4, 6))!;
        Assert.Equal((false, new DateOnly(2026, 4, 6), new DateOnly(2027, 4, 5)), (before.IsFixed, before.Becomes.First, before.Becomes.Last));

        (await books.SetYearAsync(studio.Ana, April)).Expect();

        Assert.Equal((new DateOnly(2026, 4, 6), (4, 6)), ((await books.ReadAsync()).YearFirst, await books.YearStartAsync()));
        Assert.IsType<Because>((await books.SetYearAsync(studio.Ana, April with { RequestId = Guid.CreateVersion7() })).Refusal);
        Assert.IsType<OwnersOnly>((await books.SetYearAsync(studio.Bo, new SetFinancialYear { Month = 7 })).Refusal);
        Assert.Null(await books.YearChangeAsync(2, 29));
    }

    [Fact]
    public async Task WithAFixedMethod_SaysWhatItDoesFirst_ThenCutsTheYearBeforeShort()
    {
        await using var studio = await TestStudio.NewAsync();
        var books = studio.Get<Books>();
        (await books.ChooseMethodAsync(studio.Ana, new ChooseMethod { YearOf = new DateOnly(2026, 6, 1), Method = ValuationMethod.MovingAverage })).Expect();
        (await books.ChooseMethodAsync(studio.Ana, new ChooseMethod { YearOf = new DateOnly(2028, 6, 1), Method = ValuationMethod.SpecificLot })).Expect();

        var asked = Assert.IsType<YearsAreFixed>((await books.SetYearAsync(studio.Ana, April)).Refusal);

        Assert.Equal(new FinancialYear(new DateOnly(2027, 1, 1), new DateOnly(2027, 4, 5)), asked.Change.CutShort);
        Assert.Equal(new MovedMethod(ValuationMethod.SpecificLot, new DateOnly(2028, 1, 1), new DateOnly(2028, 4, 6)), Assert.Single(asked.Change.Moved));
        Assert.Contains("1 Jan 2027 to 5 Apr 2027, 95 days, valued by moving average.", asked.ToDo, StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2026, 1, 1), (await books.ReadAsync()).YearFirst);

        (await books.SetYearAsync(studio.Ana, April with { IsRead = true, RequestId = Guid.CreateVersion7() })).Expect();

        Assert.Equal((new DateOnly(2026, 1, 1), new DateOnly(2026, 12, 31)), (await YearAsync(books, 2026, 10, 26)));
        Assert.Equal((new DateOnly(2027, 1, 1), new DateOnly(2027, 4, 5)), await YearAsync(books, 2027, 2, 1));
        Assert.Equal((new DateOnly(2027, 4, 6), new DateOnly(2028, 4, 5)), await YearAsync(books, 2027, 4, 6));
        Assert.Equal(ValuationMethod.MovingAverage, (await books.YearAsync(new DateOnly(2028, 2, 1))).Closing.Method);
    }

    [Fact]
    public async Task AnotherDayBeforeTheFirstHasCome_TakesItsPlace()
    {
        await using var studio = await TestStudio.NewAsync();
        var books = studio.Get<Books>();
        (await books.ChooseMethodAsync(studio.Ana, new ChooseMethod { YearOf = new DateOnly(2026, 6, 1), Method = ValuationMethod.Fifo })).Expect();
        (await books.SetYearAsync(studio.Ana, April with { IsRead = true })).Expect();

        // A slip: December was meant, and it is in time to end the running year early.
        var change = (await books.YearChangeAsync(12, 1))!;
        Assert.Equal((new DateOnly(2026, 12, 1), new DateOnly(2026, 11, 30)), (change.First, change.Becomes.Last));
        (await books.SetYearAsync(studio.Ana, new SetFinancialYear { Month = 12, Day = 1, IsRead = true })).Expect();

        Assert.Equal((new DateOnly(2026, 1, 1), new DateOnly(2026, 11, 30)), await YearAsync(books, 2026, 10, 26));
        Assert.Equal((new DateOnly(2026, 12, 1), new DateOnly(2027, 11, 30)), await YearAsync(books, 2027, 4, 6));
        // Once it has begun it is history.
        studio.Clock.SetUtcNow(new DateTimeOffset(2027, 2, 1, 9, 0, 0, TimeSpan.Zero));
        (await books.SetYearAsync(studio.Ana, new SetFinancialYear { Month = 1, Day = 1, IsRead = true })).Expect();
        Assert.Equal((new DateOnly(2026, 12, 1), new DateOnly(2027, 11, 30)), await YearAsync(books, 2027, 4, 6));
        Assert.Equal((new DateOnly(2027, 12, 1), new DateOnly(2027, 12, 31)), await YearAsync(books, 2027, 12, 24));
        Assert.Equal((new DateOnly(2028, 1, 1), new DateOnly(2028, 12, 31)), await YearAsync(books, 2028, 5, 1));
    }

    private static async Task<(DateOnly First, DateOnly Last)> YearAsync(Books books, int year, int month, int day)
    {
        var view = await books.YearAsync(new DateOnly(year, month, day));
        return (view.First, view.Last);
    }
}
