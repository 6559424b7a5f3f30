using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Prices;

/// <summary>Own worked examples W2 to W6 of an invented studio, from what was weighed and filled to the price; computed by hand.</summary>
public class PriceBookTests
{
    private static readonly TagRounding Cents = new();

    [Fact]
    public async Task Read_AfterTheWorkedFill_CostsASaleableBottleToTheLastDigit()
    {
        await using var scene = await PriceScene.NewAsync();

        var fig = Assert.Single((await scene.Book.ReadAsync()).Products);

        Assert.Equal(("Fig, 100 mL", "RS-1"), (fig.Name, fig.LastBatch));
        Assert.Equal(207.36268m, fig.LastFill!.Cost().Total);
        Assert.Equal(207.36268m / 46, fig.LastCost);
        Assert.Equal((48, 46), (fig.LastFill.Filled, fig.LastFill.Cost().Saleable));
        Assert.False(fig.LacksWork);
    }

    [Fact]
    public async Task Read_TodaysPrices_TakeTheNewestLots()
    {
        await using var scene = await PriceScene.NewAsync();
        await scene.NewerLotAsync("Fig fragrance oil", "P-9", 0.08m);

        var fig = Assert.Single((await scene.Book.ReadAsync()).Products);

        // All 480 g at 80.00/kg instead of 33.1542 in all.
        Assert.Equal(207.36268m - 33.1542m + 38.4m, fig.AtTodaysPrices!.Cost().Total);
        Assert.Equal(207.36268m, fig.LastFill!.Cost().Total);
    }

    /// <summary>W3 and W4: markup 150 % 11.28, margin 65 % 12.89, keystone 9.02 and 18.04; net 18.33 and margin 75.4 % at 22.00, 50.8 % at half of it; the lowest web tag for 6.00 is 15.37.</summary>
    [Fact]
    public async Task Tags_InChannelsWithFees_ComeToTheWorkedNumbers()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web);

        var view = await scene.Book.ReadAsync();
        var channel = view.Channels.Single(c => c.Id == web).Is;
        var unit = Pricing.At(view.Products[0].Tags.Single().Amount, 4.51m, channel);

        Assert.Equal((18.33m, 0.754m), (Math.Round(unit.Net, 2), Math.Round(unit.Margin!.Value, 3)));
        Assert.Equal(3.065m, Math.Round(unit.Markup!.Value, 3));
        var safe = Assert.IsType<PriceResult.Found>(TargetPrice.Of(4.51m, new PriceTarget.Contribution(6.00m), channel, Cents));
        PricedUnit For(PriceTarget target) => Assert.IsType<PriceResult.Found>(TargetPrice.Of(4.51m, target, channel, Cents)).Unit;
        var markup = For(new PriceTarget.Markup(1.5m));
        Assert.Equal((11.28m, 0.60m), (Math.Round(markup.Net, 2, MidpointRounding.AwayFromZero), Math.Round(markup.Margin!.Value, 2)));
        Assert.Equal(12.89m, Math.Round(For(new PriceTarget.Margin(0.65m)).Net, 2));
        Assert.Equal((9.02m, 18.04m), Margins.Keystone(4.51m));
        Assert.Equal(0.508m, Math.Round(Margins.Margin(unit.Net / 2, 4.51m)!.Value, 3));
        Assert.Equal((15.37m, 6.0036m, 5.9962m), (safe.Tag, Math.Round(safe.Unit.Contribution, 4), Math.Round(safe.CoinLess!.Contribution, 4)));
    }

    /// <summary>W5: 231.00 of fixed cost over 13.4383 a bottle is 18 bottles.</summary>
    [Fact]
    public async Task Stall_FromItsChannel_BreaksEvenAtEighteen()
    {
        await using var scene = await PriceScene.NewAsync();
        var (_, stall) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, stall);

        var unit = Pricing.At(22.00m, 4.51m, (await scene.Book.ReadAsync()).Channels.Single(c => c.Id == stall).Is);
        var even = Assert.IsType<BreakEvenResult.From>(BreakEven.Of([new("Pitch", 85m), new("Fuel", 20m), new("Hours", 126m)], unit.Contribution));

        Assert.Equal((13.4383m, 18), (Math.Round(unit.Contribution, 4), even.Units));
    }

    /// <summary>W6: fragrance + 18 % is + 5.967756 a batch and 4.6376 a bottle; 75.4 falls to 74.7 %; tag 22.27 or load 11.1 % restores 75 %.</summary>
    [Fact]
    public async Task WhatIf_FragranceUpEighteenPercent_NamesWhatRestoresTheFloor()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web);
        (await scene.Book.SetFloorAsync(scene.Studio.Ana, new SetMarginFloor { SizeId = scene.Size, FloorPercent = 75 })).Expect();

        var view = await scene.Book.ReadAsync();
        var fig = view.Products[0];
        var oil = await scene.Studio.MaterialOfLotAsync("P-1");
        var effect = (ProductEffect.Worked)WhatIf.Of([fig.LastFill!], [new SupposedChange.PriceBy(oil, 0.18m)], Cents)[0];

        Assert.Empty(view.Alerts());
        Assert.Equal(5.967756m, effect.BatchAfter - effect.BatchBefore);
        Assert.Equal(4.6376m, Math.Round(effect.After, 4));
        Assert.Equal((0.754m, 0.747m), (Math.Round(effect.Tags[0].Before.Margin!.Value, 3), Math.Round(effect.Tags[0].After.Margin!.Value, 3)));
        var alert = effect.Tags[0].Alert!;
        Assert.Equal(22.27m, ((PriceResult.Found)alert.RestoringTag).Tag);
        Assert.Equal(0.111m, ((LoadAnswer.Restores)alert.Load!).Load);
    }

    [Fact]
    public async Task Alerts_MarginUnderTheStudiosFloor_OncePerTagAndNotWhereAShopTakesItsPart()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, stall) = await scene.ChannelsAsync();
        var shop = (await scene.Book.KeepChannelAsync(scene.Studio.Ana, PriceScene.Channel("Wholesale") with { OurSharePercent = 50 })).Expect().ChannelId;
        await scene.TagAsync(20.00m, web, stall, shop);
        (await scene.Book.SetRulesAsync(scene.Studio.Ana, new SetPriceRules { TaxPercent = 20, FloorPercent = 75 })).Expect();

        var alert = Assert.Single((await scene.Book.ReadAsync()).Alerts());

        Assert.Equal(["Web shop", "Market stall"], alert.Channels);
        // The newest oil lot costs 67.374/kg: 206.54800 for 46. Own sum: (16.6667 − 4.4902) ÷ 16.6667.
        Assert.Equal(0.731m, Math.Round(alert.Alert.Margin, 3));
    }

    [Fact]
    public async Task SetTag_LaterDay_CountsFromThatDay_AndHistoryStays()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web);
        (await scene.Book.SetTagAsync(scene.Studio.Bo, new SetTag { SizeId = scene.Size, ChannelIds = [web], Amount = 23.50m, From = new DateOnly(2026, 11, 1), Note = "Oil costs more" })).Expect();

        Assert.Equal(22.00m, (await scene.Book.ReadAsync()).Products[0].Tags.Single().Amount);
        scene.Studio.Clock.Advance(TimeSpan.FromDays(6));
        Assert.Equal(23.50m, (await scene.Book.ReadAsync()).Products[0].Tags.Single().Amount);
        (await scene.Book.SetTagAsync(scene.Studio.Bo, new SetTag { SizeId = scene.Size, ChannelIds = [web], Amount = null })).Expect();
        Assert.Empty((await scene.Book.ReadAsync()).Products[0].Tags);

        Assert.Equal([null, 23.50m, 22.00m], (await scene.Book.TagHistoryAsync(scene.Size)).Select(t => t.Amount));
        Assert.IsType<Because>((await scene.Book.SetTagAsync(scene.Studio.Bo, new SetTag { SizeId = scene.Size, ChannelIds = [web], Amount = 9, From = new DateOnly(2026, 10, 1) })).Refusal);
    }

    [Fact]
    public async Task Tags_InTheDatabase_AreHistory()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web);
        await using var owner = new StudioDb(StudioDbOptions.For(scene.Studio.OwnerConnectionString));

        await Assert.ThrowsAnyAsync<Exception>(() => owner.Database.ExecuteSqlAsync($"update price_tags set amount = 1"));
        await Assert.ThrowsAnyAsync<Exception>(() => owner.Database.ExecuteSqlAsync($"delete from price_tags"));
        Assert.Equal(22.00m, Assert.Single(await scene.Book.TagHistoryAsync(scene.Size)).Amount);
    }

    [Fact]
    public async Task KeepChannel_ChangedByBoth_SecondIsStaleAndFeesFollowTheFirst()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        var opened = (await scene.Book.ReadAsync()).Channels.Single(c => c.Id == web);
        var ana = PriceScene.Channel("Web shop") with { ChannelId = web, Version = opened.Version, Fees = [new() { Name = "Card", Percent = 3, Fixed = 0.25m }] };
        (await scene.Book.KeepChannelAsync(scene.Studio.Ana, ana)).Expect();

        Assert.IsType<Stale>((await scene.Book.KeepChannelAsync(scene.Studio.Bo, PriceScene.Channel("Web shop") with { ChannelId = web, Version = opened.Version, Fees = [] })).Refusal);

        Assert.Equal([new ChannelFee("Card", 0.03m, 0.25m, FeeBasis.Paid)], (await scene.Book.ReadAsync()).Channels.Single(c => c.Id == web).Is.Fees);
        Assert.IsType<Because>((await scene.Book.KeepChannelAsync(scene.Studio.Bo, PriceScene.Channel("web SHOP"))).Refusal);
    }

    [Theory]
    [InlineData("Name", "")]
    [InlineData("TaxPercent", "101")]
    [InlineData("OurSharePercent", "0")]
    [InlineData("Wanted", "-1")]
    public void KeepChannel_WhatCannotBe_IsSaidAtItsField(string field, string value)
    {
        var request = PriceScene.Channel("Web shop");
        var property = typeof(KeepChannel).GetProperty(field)!;
        property.SetValue(request, property.PropertyType == typeof(string) ? value : decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture));

        Assert.Contains(new KeepChannelValidator().Validate(request).Errors, e => e.PropertyName == field);
    }

    [Fact]
    public async Task Read_NeverFilled_CostsMaterialsAndPackagingAndSaysSo()
    {
        await using var scene = await PriceScene.NewAsync(filled: false);

        var fig = Assert.Single((await scene.Book.ReadAsync()).Products);

        Assert.True(fig.LacksWork);
        Assert.Null(fig.LastFill);
        // 82.0 g ÷ 0.985 at 12 % of 0.067374, 5 % of 0.0112 and 83 % of 0.008644, and 1.8348 of packaging.
        Assert.Equal(82.0m / 0.985m * (0.12m * 0.067374m + 0.05m * 0.0112m + 0.83m * 0.008644m) + 1.8348m, fig.Cost!.Value, 10);
    }
}
