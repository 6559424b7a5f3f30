using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class LotDatesTests
{
    private static readonly DateOnly May = new(2027, 5, 1);
    private static readonly DateOnly June = new(2027, 6, 1);
    private static readonly DateOnly July = new(2027, 7, 1);

    [Fact]
    public void Expiry_NoDates_IsUnknown()
    {
        Assert.Null(LotDates.Expiry(null, null, null, null));
        Assert.Null(LotDates.EffectiveExpiry(null, null, May, null));
        Assert.Null(LotDates.EffectiveExpiry(null, null, null, 90));
    }

    [Fact]
    public void Expiry_SupplierFirst_NamesSupplier() =>
        Assert.Equal(new LotExpiry(May, ExpiryReason.SupplierExpiry), LotDates.Expiry(May, June, June, 30));

    [Fact]
    public void Expiry_RetestFirst_NamesRetest() =>
        Assert.Equal(new LotExpiry(May, ExpiryReason.Retest), LotDates.Expiry(July, May, May, 61));

    [Fact]
    public void Expiry_OpenedJarRunsOutFirst_NamesOpening() =>
        Assert.Equal(new LotExpiry(June, ExpiryReason.Opened), LotDates.Expiry(July, July, May, 31));

    [Fact]
    public void Expiry_AllOnOneDay_NamesTheOneThatCannotBeMoved() =>
        Assert.Equal(new LotExpiry(June, ExpiryReason.SupplierExpiry), LotDates.Expiry(June, June, May, 31));

    [Fact]
    public void Expiry_RetestPassed_NeverGoesBeyondSupplierExpiry() =>
        Assert.Equal(June, LotDates.EffectiveExpiry(June, May.AddDays(90), null, null));

    [Theory]
    [InlineData(-1)]
    [InlineData(LotDates.LongestLifeAfterOpeningDays + 1)]
    public void Expiry_LifeOutOfRange_Throws(int days) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LotDates.EffectiveExpiry(null, null, May, days));

    [Fact]
    public void NotLaterThanParents_TakesEarliestKnown()
    {
        Assert.Equal(May, LotDates.NotLaterThanParents(July, [June, null, May]));
        Assert.Equal(June, LotDates.NotLaterThanParents(June, [null, July]));
        Assert.Equal(July, LotDates.NotLaterThanParents(null, [July]));
        Assert.Null(LotDates.NotLaterThanParents(null, [null]));
    }
}
