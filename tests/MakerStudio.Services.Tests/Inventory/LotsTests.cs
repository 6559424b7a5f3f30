using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using static MakerStudio.Services.Tests.Inventory.ReceivingSeed;

namespace MakerStudio.Services.Tests.Inventory;

public class LotsTests
{
    [Fact]
    public async Task Receive_WithoutCoA_IsQuarantinedUntilItIsAttachedAndReleased_BothActsSigned()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var supplier = await studio.SupplierAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.RequireAsync(oil, PaperKind.Sds, PaperKind.CertificateOfAnalysis);
        await studio.PaperAsync(oil, PaperKind.Sds);

        var received = await studio.ReceiveAsync(supplier, oil, 5, AmountUnit.Kilogram, 310);

        Assert.Equal((LotStatus.Quarantine, "CoA missing"), (received.Status, received.Why));
        Assert.Equal("P-1 is in quarantine.", (await studio.LotRowAsync("P-1")).WhyNot);
        var missing = Assert.IsType<PapersMissing>((await lots.ReleaseAsync(studio.Bo, new ReleaseLot { LotId = received.LotId })).Refusal);
        Assert.Contains("CoA missing", missing.Happened);

        await studio.PaperAsync(oil, PaperKind.CertificateOfAnalysis, received.LotId);
        (await lots.ReleaseAsync(studio.Bo, new ReleaseLot { LotId = received.LotId, Note = "CoA attached, papers complete" })).Expect();

        Assert.Null((await studio.LotRowAsync("p-1 ")).WhyNot);
        var history = await lots.HistoryAsync(received.LotId);
        Assert.Equal(["Receipt", "Quarantine", "Released"], history.Select(h => h.What));
        Assert.Equal(["Ana", "Ana", "Bo"], history.Select(h => h.Who));
    }

    [Fact]
    public async Task Receive_CoAOfAnotherLot_DoesNotCount()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.RequireAsync(oil, PaperKind.CertificateOfAnalysis);
        var first = await studio.ReceiveAsync(supplier, oil, 5, AmountUnit.Kilogram, 310);
        await studio.PaperAsync(oil, PaperKind.CertificateOfAnalysis, first.LotId);

        var second = await studio.ReceiveAsync(supplier, oil, 5, AmountUnit.Kilogram, 310);

        Assert.Equal(LotStatus.Quarantine, second.Status);
        Assert.IsType<PapersMissing>((await studio.Get<Lots>().ReleaseAsync(studio.Ana, new ReleaseLot { LotId = second.LotId })).Refusal);
    }

    [Fact]
    public async Task Retest_DatePassedYesterday_IsUsableAgain_AndHistoryShowsBothDates()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        var lot = await studio.LotAsync(oil, "N-5", 214, 0.0885m, expires: new DateOnly(2027, 6, 30), retest: new DateOnly(2026, 10, 25));
        Assert.Equal("N-5 was good until 25 Oct 2026.", (await studio.LotRowAsync("N-5")).WhyNot);

        var retested = (await lots.RetestAsync(studio.Ana, new RetestLot { LotId = lot, Finding = "re-smelled, passed", Days = 90 })).Expect();

        Assert.Equal(new DateOnly(2027, 1, 24), retested.RetestOn);
        var row = await studio.LotRowAsync("N-5");
        Assert.Null(row.WhyNot);
        Assert.Equal(new DateOnly(2027, 6, 30), row.ExpiresOn);
        var line = (await lots.HistoryAsync(lot))[^1];
        Assert.Equal((new DateOnly(2026, 10, 25), new DateOnly(2027, 1, 24), "re-smelled, passed"), (line.OldDate, line.NewDate, line.What));
    }

    [Fact]
    public async Task Retest_SupplierExpiryPassedOrLotRejected_HasNoOverride()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        var expired = await studio.LotAsync(oil, "N-5", 214, 0.0885m, expires: new DateOnly(2026, 10, 25));
        var rejected = await studio.LotAsync(oil, "N-6", 100, 0.0885m, retest: new DateOnly(2026, 10, 25));
        (await lots.RejectAsync(studio.Ana, new RejectLot { LotId = rejected, Reason = "rancid" })).Expect();
        var before = await studio.FootprintAsync();

        Assert.Contains("25 Oct 2026", (await lots.RetestAsync(studio.Ana, new RetestLot { LotId = expired, Finding = "passed", Days = 90 })).Refusal!.Happened);
        Assert.IsType<RejectedIsFinal>((await lots.RetestAsync(studio.Ana, new RetestLot { LotId = rejected, Finding = "passed", Days = 90 })).Refusal);
        Assert.IsType<RejectedIsFinal>((await lots.ReleaseAsync(studio.Ana, new ReleaseLot { LotId = rejected })).Refusal);
        Assert.IsType<RejectedIsFinal>((await lots.HoldAsync(studio.Ana, new HoldLot { LotId = rejected, Reason = "second thoughts" })).Refusal);
        Assert.IsType<RejectedIsFinal>((await lots.QuarantineAsync(studio.Ana, new QuarantineLot { LotId = rejected, Reason = "second thoughts" })).Refusal);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Hold_ThenLift_KeepsBothReasons_AndLiftsIntoQuarantineWhenAPaperIsMissing()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-2", 1000, 0.067m);
        Assert.IsType<NotAcceptable>((await lots.HoldAsync(studio.Bo, new HoldLot { LotId = lot })).Refusal);
        (await lots.HoldAsync(studio.Bo, new HoldLot { LotId = lot, Reason = "smells of solvent" })).Expect();
        Assert.Equal("P-2 is on hold.", (await studio.LotRowAsync("P-2")).WhyNot);
        Assert.IsType<Because>((await lots.ReleaseAsync(studio.Ana, new ReleaseLot { LotId = lot })).Refusal);

        await studio.RequireAsync(oil, PaperKind.Sds);
        Assert.Equal(LotStatus.Quarantine, (await lots.LiftHoldAsync(studio.Ana, new LiftHold { LotId = lot, Reason = "was the blotter" })).Expect().Status);
        await studio.PaperAsync(oil, PaperKind.Sds);
        (await lots.HoldAsync(studio.Bo, new HoldLot { LotId = lot, Reason = "once more" })).Expect();
        Assert.Equal(LotStatus.Released, (await lots.LiftHoldAsync(studio.Ana, new LiftHold { LotId = lot, Reason = "compared with the retain" })).Expect().Status);

        Assert.Equal(
            ["smells of solvent", "Hold lifted: was the blotter; SDS missing", "once more", "Hold lifted: compared with the retain"],
            (await lots.HistoryAsync(lot)).Where(h => h.Change is null).Select(h => h.Why));
    }

    [Fact]
    public async Task Open_StartsTheLifeAfterOpening()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        await using (var db = studio.Db())
        {
            (await db.Materials.SingleAsync()).LifeAfterOpeningDays = 180;
            await db.SaveChangesAsync();
        }

        var lot = await studio.LotAsync(oil, "N-5", 214, 0.0885m, expires: new DateOnly(2027, 9, 24));
        (await studio.Get<Lots>().OpenAsync(studio.Ana, new OpenLot { LotId = lot })).Expect();

        var row = await studio.LotRowAsync("N-5");
        Assert.Equal(new DateOnly(2026, 10, 26), row.OpenedOn);
        Assert.Equal(new LotExpiry(new DateOnly(2027, 4, 24), ExpiryReason.Opened), row.UseBy);
        Assert.IsType<NotAcceptable>((await studio.Get<Lots>().OpenAsync(studio.Ana, new OpenLot { LotId = lot, OpenedOn = new DateOnly(2026, 10, 27) })).Refusal);
    }

    [Fact]
    public async Task Count_GrossLessTare_PostsTheVariance_InMassAndMoney()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", 4700, 0.067374m);
        var opened = await studio.LotRowAsync("P-1");

        var counted = (await studio.Get<Lots>().CountAsync(studio.Bo, new CountLot
        {
            LotId = lot, GrossMilligrams = 5_600_000, TareMilligrams = 912_000, AsOfMovement = opened.LastMovement,
        })).Expect();

        Assert.Equal((4_688_000L, 4_700_000L, -12_000L, 4_688_000L), (counted.Counted, counted.Book, counted.Variance, counted.OnHand));
        Assert.Equal(-0.808488m, counted.VarianceValue);
        var row = await studio.LotRowAsync("P-1");
        Assert.Equal((4_688_000L, 912_000L), (row.OnHand, row.TareMilligrams));
        var line = (await studio.Get<Lots>().HistoryAsync(lot))[^1];
        Assert.Equal(("Count", -12_000L), (line.What, line.Change));
        Assert.Contains("gross 5,600.0 g − tare 912.0 g = 4,688.0 g, book 4,700.0 g", line.Why);
    }

    [Fact]
    public async Task Count_LotMovedSinceItWasOpened_SaysWhatMoved_AndComparesWithTheMomentThatIsSaid()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", 1000, 0.067m);
        var opened = await studio.LotRowAsync("P-1");
        studio.Clock.Advance(TimeSpan.FromMinutes(11));
        (await lots.AdjustAsync(studio.Bo, new AdjustLot { LotId = lot, Change = -120_000, Reason = AdjustmentReason.Sample })).Expect();
        var count = new CountLot { LotId = lot, GrossMilligrams = 990_000, TareMilligrams = 0, AsOfMovement = opened.LastMovement };

        var moved = Assert.IsType<LotMovedSince>((await lots.CountAsync(studio.Ana, count)).Refusal);

        Assert.Equal("Bo, 10:11, adjustment −120.0 g", Assert.Single(moved.Moves));
        Assert.Equal((1_000_000L, 880_000L), (moved.BookThen, moved.BookNow));
        count.Taken = CountTaken.BeforeTheyMoved;
        var counted = (await lots.CountAsync(studio.Ana, count)).Expect();
        Assert.Equal((-10_000L, 870_000L), (counted.Variance, counted.OnHand));
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task Count_Agrees_PostsNothingButSaysSo()
    {
        await using var studio = await TestStudio.NewAsync();
        var bottle = await studio.MaterialAsync("Bottle", MaterialKind.Bottle, StockUnit.Each);
        var lot = await studio.LotAsync(bottle, "B-4", 452, 0.8648m);
        var opened = await studio.LotRowAsync("B-4");
        Assert.IsType<Because>((await studio.Get<Lots>().CountAsync(studio.Ana, new CountLot { LotId = lot, GrossMilligrams = 5, AsOfMovement = opened.LastMovement })).Refusal);

        Assert.Equal(0, (await studio.Get<Lots>().CountAsync(studio.Ana, new CountLot { LotId = lot, Pieces = 452, AsOfMovement = opened.LastMovement })).Expect().Variance);

        Assert.Equal("Counted, agrees", (await studio.Get<Lots>().HistoryAsync(lot))[^1].What);
        await using var db = studio.Db();
        Assert.Equal(1, await db.Movements.CountAsync());
    }

    [Fact]
    public async Task Adjust_MoreThanThereIs_IsRefusedWithTheNumbers()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        var lot = await studio.LotAsync(oil, "N-7", 20, 0.0885m);
        var before = await studio.FootprintAsync();

        var less = Assert.IsType<HoldsLess>((await lots.AdjustAsync(studio.Ana, new AdjustLot { LotId = lot, Change = -150_000, Reason = AdjustmentReason.Spill })).Refusal);

        Assert.Equal("N-7 holds 20.0 g and 150.0 g was to go: short 130.0 g.", less.Happened);
        Assert.IsType<NotAcceptable>((await lots.AdjustAsync(studio.Ana, new AdjustLot { LotId = lot, Change = 5_000, Reason = AdjustmentReason.Evaporation })).Refusal);
        Assert.IsType<NotAcceptable>((await lots.AdjustAsync(studio.Ana, new AdjustLot { LotId = lot, Change = -5_000, Reason = AdjustmentReason.Count })).Refusal);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Reverse_AnAdjustment_NamesItAndWorksOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", 4700, 0.067m);
        var sample = (await lots.AdjustAsync(studio.Bo, new AdjustLot { LotId = lot, Change = -12_000, Reason = AdjustmentReason.Sample })).Expect();

        var back = (await lots.ReverseAsync(studio.Bo, new ReverseMovement { MovementId = sample.MovementId, Reason = "taken from P-2's tester, not this jar" })).Expect();

        Assert.Equal(4_700_000, back.OnHand);
        Assert.IsType<Because>((await lots.ReverseAsync(studio.Ana, new ReverseMovement { MovementId = sample.MovementId, Reason = "again" })).Refusal);
        Assert.IsType<Because>((await lots.ReverseAsync(studio.Ana, new ReverseMovement { MovementId = back.MovementId, Reason = "undo the undo" })).Refusal);
        var history = await lots.HistoryAsync(lot);
        Assert.Equal(sample.MovementId, history[^1].ReversesId);
        Assert.True(history[^2].IsReversed);
        Assert.False(history[^2].MayReverse);
    }

    [Fact]
    public async Task Reverse_WouldGoBelowZero_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", 10, 0.067m);
        var found = (await lots.AdjustAsync(studio.Bo, new AdjustLot { LotId = lot, Change = 50_000, Reason = AdjustmentReason.CorrectionOfEntry, Note = "second jar found" })).Expect();
        (await lots.AdjustAsync(studio.Bo, new AdjustLot { LotId = lot, Change = -40_000, Reason = AdjustmentReason.Spill })).Expect();

        var less = Assert.IsType<HoldsLess>((await lots.ReverseAsync(studio.Ana, new ReverseMovement { MovementId = found.MovementId, Reason = "no" })).Refusal);

        Assert.Equal(30_000, less.Missing);
    }

    [Fact]
    public async Task Reverse_AReceipt_PointsToItsDelivery()
    {
        await using var studio = await TestStudio.NewAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var lot = await studio.ReceiveAsync(await studio.SupplierAsync(), wax, 10, AmountUnit.Kilogram, 60);
        var entry = (await studio.Get<Lots>().HistoryAsync(lot.LotId))[0];

        var elsewhere = Assert.IsType<TakeBackElsewhere>(
            (await studio.Get<Lots>().ReverseAsync(studio.Ana, new ReverseMovement { MovementId = entry.MovementId!.Value, Reason = "wrong" })).Refusal);

        Assert.Contains("Delivery D-1", elsewhere.ToDo);
    }

    [Fact]
    public async Task Database_BalanceBelowZero_IsRefusedEvenByRawSql()
    {
        await using var studio = await TestStudio.NewAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        await studio.LotAsync(wax, "W-6", 10, 0.006m);
        foreach (var connectionString in new[] { studio.AppConnectionString, studio.OwnerConnectionString })
        {
            await using var line = new NpgsqlConnection(connectionString);
            await line.OpenAsync();
            await using var update = new NpgsqlCommand("update lot_balances set on_hand = on_hand - 10001", line);
            var refused = await Assert.ThrowsAsync<PostgresException>(() => update.ExecuteNonQueryAsync());
            Assert.Equal("on_hand_never_negative", refused.ConstraintName);
        }
    }

    [Fact]
    public async Task Adjust_TwoAtOnceForTheLastOfIt_ExactlyOnePosts()
    {
        await using var studio = await TestStudio.NewAsync();
        var lots = studio.Get<Lots>();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        for (var round = 0; round < 20; round++)
        {
            var lot = await studio.LotAsync(oil, $"P-{round + 1}", 200, 0.067m);
            var outcomes = await Task.WhenAll(
                Task.Run(() => lots.AdjustAsync(studio.Ana, new AdjustLot { LotId = lot, Change = -180_000, Reason = AdjustmentReason.Sample })),
                Task.Run(() => lots.AdjustAsync(studio.Bo, new AdjustLot { LotId = lot, Change = -150_000, Reason = AdjustmentReason.Sample })));
            Assert.Single(outcomes, o => o is Done<LotAdjusted>);
            Assert.Single(outcomes, o => o.Refusal is HoldsLess { Missing: 130_000 });
        }

        Assert.Empty(await studio.DifferencesAsync());
    }
}
