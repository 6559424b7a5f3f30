using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class LotChoiceTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly DateOnly Soon = Today.AddDays(10);
    private static readonly DateOnly Later = Today.AddDays(100);

    [Fact]
    public void For_EarliestExpiryFirst_WhateverTheOrderOfArrival()
    {
        var plan = Pick(100, Lot("P-1", 500, Later, received: -50), Lot("P-2", 500, Soon, received: -1));
        Assert.Equal([("P-2", 100m)], Shown(plan));
        Assert.True(plan.IsMet);
    }

    [Fact]
    public void For_EqualDate_OpenBeforeUnopened()
    {
        var plan = Pick(100, Lot("P-1", 500, Soon), Lot("P-2", 500, Soon, open: true));
        Assert.Equal([("P-2", 100m)], Shown(plan));
    }

    [Fact]
    public void For_EarlierUnopened_StillBeforeLaterOpen()
    {
        var plan = Pick(100, Lot("P-1", 500, Later, open: true), Lot("P-2", 500, Soon));
        Assert.Equal([("P-2", 100m)], Shown(plan));
    }

    [Fact]
    public void For_NoExpiry_ComesLast_EvenWhenOpenOrAfterTheLastDayThereIs()
    {
        var plan = Pick(
            300, Lot("P-1", 100, null, open: true), Lot("P-2", 100, DateOnly.MaxValue), Lot("P-3", 100, Later));
        Assert.Equal([("P-3", 100m), ("P-2", 100m), ("P-1", 100m)], Shown(plan));
    }

    [Fact]
    public void For_EqualDateAndState_ReceivedFirstThenCode()
    {
        var plan = Pick(
            300, Lot("P-3", 100, Soon), Lot("P-2", 100, Soon), Lot("P-9", 100, Soon, received: -30));
        Assert.Equal([("P-9", 100m), ("P-2", 100m), ("P-3", 100m)], Shown(plan));
    }

    [Fact]
    public void For_DemandSpansLots_SplitsAndLeavesTheRest()
    {
        var plan = Pick(480, Lot("P-1", 300, Soon), Lot("P-2", 5000, Later));
        Assert.Equal([("P-1", 300m), ("P-2", 180m)], Shown(plan));
        Assert.True(plan.Shortfall.IsZero);
    }

    [Fact]
    public void For_TooLittle_NamesTheShortfall()
    {
        // Own worked example: Ana took 180 of 200 g, Bo needs 150.
        var plan = Pick(150, Lot("P-1", 20, Soon));
        Assert.Equal([("P-1", 20m)], Shown(plan));
        Assert.Equal(StockAmount.OfGrams(130), plan.Shortfall);
        Assert.False(plan.IsMet);
    }

    [Fact]
    public void For_UnusableLots_AreNeverPickedAndSayWhy()
    {
        var yesterday = Today.AddDays(-1);
        var plan = Pick(
            100,
            Lot("P-1", 500, Soon, status: LotStatus.Quarantine),
            Lot("P-2", 500, Soon, status: LotStatus.OnHold),
            Lot("P-3", 500, yesterday, status: LotStatus.Rejected),
            Lot("P-4", 500, yesterday),
            Lot("P-5", 0, Soon));
        Assert.Empty(plan.Picks);
        Assert.Equal(StockAmount.OfGrams(100), plan.Shortfall);
        Assert.Equal(
            [
                ("P-1", new LotRefusal.NotReleased(LotStatus.Quarantine)),
                ("P-2", new LotRefusal.NotReleased(LotStatus.OnHold)),
                ("P-3", new LotRefusal.Rejected()),
                ("P-4", new LotRefusal.Expired(yesterday)),
                ("P-5", new LotRefusal.Empty()),
            ],
            plan.PassedOver.Select(p => (p.Lot.Code, p.Why)));
    }

    [Fact]
    public void For_LastDayOfUse_MayStillBePicked() =>
        Assert.True(Pick(100, Lot("P-1", 100, Today)).IsMet);

    [Fact]
    public void For_NothingWanted_PicksNothing()
    {
        var plan = Pick(0, Lot("P-1", 100, Soon));
        Assert.Empty(plan.Picks);
        Assert.True(plan.IsMet);
    }

    [Fact]
    public void For_NegativeDemand_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Pick(-1, Lot("P-1", 100, Soon)));

    [Fact]
    public void For_LotCountedInPieces_Throws()
    {
        var bottles = Lot("B-1", 0, null) with { OnHand = StockAmount.OfPieces(10) };
        Assert.Throws<InvalidOperationException>(() => Pick(100, bottles));
    }

    private static PickPlan Pick(decimal grams, params LotOnShelf[] lots) =>
        LotChoice.For(StockAmount.OfGrams(grams), lots, Today);

    private static IEnumerable<(string, decimal)> Shown(PickPlan plan) =>
        plan.Picks.Select(p => (p.Code, p.Amount.Display));

    private static LotOnShelf Lot(
        string code,
        decimal grams,
        DateOnly? expiry,
        bool open = false,
        int received = -5,
        LotStatus status = LotStatus.Released) =>
        new(Guid.NewGuid(), code, status, StockAmount.OfGrams(grams), expiry, open, Today.AddDays(received));
}
