using MakerStudio.Services.Labels;

namespace MakerStudio.Services.Tests.Labels;

public class LabelStocksTests
{
    [Fact]
    public async Task Add_SheetOfNine_IsInTheDrawerAsTyped()
    {
        await using var studio = await TestStudio.NewAsync();
        var stocks = studio.Get<LabelStocks>();
        (await stocks.AddAsync(studio.Ana, SeedLabels.NineOnA4())).Expect();

        var item = Assert.Single(await stocks.ListAsync());
        Assert.Equal(new(60m, 80m, new(210m, 297m, 3, 3, 60m, 80m, 15m, 28.5m)), item.Stock);
        (await stocks.RetireAsync(studio.Ana, new RetireLabelStock { StockId = item.Id })).Expect();
        Assert.Empty(await stocks.ListAsync());
    }

    [Fact]
    public async Task Add_LabelsThatOverlapOrLeaveThePage_AreRefusedInMillimetres()
    {
        await using var studio = await TestStudio.NewAsync();
        var refused = await studio.Get<LabelStocks>().AddAsync(studio.Ana, SeedLabels.NineOnA4() with { PitchAcross = 55m, MarginTop = 60m });
        var why = Assert.IsType<NotAcceptable>(refused.Refusal).Happened;
        Assert.Contains("repeat every 55 mm", why, StringComparison.Ordinal);
        Assert.Contains("last row ends at 300 mm", why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_SameNameTwice_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var stocks = studio.Get<LabelStocks>();
        (await stocks.AddAsync(studio.Ana, SeedLabels.NineOnA4())).Expect();
        Assert.IsType<Because>((await stocks.AddAsync(studio.Bo, SeedLabels.NineOnA4())).Refusal);
    }
}
