using MakerStudio.Browser.Tests.Host;
using MakerStudio.Core.Finished;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Labels;

namespace MakerStudio.Browser.Tests.EveryPage;

/// <summary>The sample studio: six weeks of two people at work, so that every page has something to show.</summary>
public class SampleHost : StudioHost
{
    private readonly SampleSignIns _signIns = SampleSignIns.Draw();

    /// <summary>Wed 25 Nov 2026, 10:00 in Berlin.</summary>
    protected override DateTimeOffset Begins => new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    protected override async Task SettleInAsync()
    {
        (await App.Get<SampleStudio>().MakeAsync(_signIns)).Expect();
        await KnowPeopleAsync();
        await WeighBeforeTheReceiptAsync();
        await AssembleKitsAsync();
        await PrintLabelsAsync();
        await WriteDownAsync();
        (await App.Get<Customers>().AddAsync(Ana, new AddCustomer { Name = "Juniper Row Books", Email = "till@juniper.example" })).Expect();
    }

    /// <summary>A receipt to follow, so that the page of those has one.</summary>
    private async Task WeighBeforeTheReceiptAsync()
    {
        var sheet = (await App.Get<WeighSheets>().SheetAsync(await App.ValueAsync<string>("select code from batches where state = 'Weighing'")))!;
        (await App.Get<WeighSheets>().RecordAsync(Bo, new RecordWeighing
        {
            BatchId = sheet.BatchId, LineId = sheet.Current!.LineId, NetMilligrams = sheet.Current.RemainingMilligrams,
            ReceiptToFollow = true, Reason = "the invoice is still in the post",
        })).Expect();
    }

    /// <summary>Two gift sets of what is on the studio's shelf.</summary>
    private async Task AssembleKitsAsync()
    {
        var products = (await App.Get<FinishedGoods>().HereAsync(Places.StudioShelf)).Where(g => g.Status == UnitStatus.Saleable).Select(g => g.Product).Distinct().Take(2);
        var kit = (await App.Get<Kits>().DefineAsync(Ana, new DefineKit
        {
            Name = "Hall and hearth", Items = [.. products.Select(p => new KitItemTyped { FormulaId = p.FormulaId, SizeName = p.SizeName, Count = 1 })],
        })).Expect();
        (await App.Get<Kits>().AssembleAsync(Ana, new AssembleKit { KitId = kit.KitId, Count = 2 })).Expect();
    }

    /// <summary>For the batch whose label is confirmed.</summary>
    private async Task PrintLabelsAsync() => (await App.Get<BatchLabels>().PrintAsync(Ana, new PrintLabels
    {
        BatchId = await App.ValueAsync<Guid>("select id from batches where code = 'RS-1'"), Count = 9, StudioAddress = "http://localhost/",
    })).Expect();

    /// <summary>The first product in the books, to what a clearance would bring.</summary>
    private async Task WriteDownAsync() => (await App.Get<Books>().WriteDownAsync(Ana, new WriteDownStock
    {
        Product = (await App.Get<Books>().ReadAsync()).Finished[0].Key, SellingPrice = 1m, ToSell = 0.2m, Reason = "cartons faded in the window",
    })).Expect();

    protected override string PassphraseOf(string person) => (person == _signIns.Ana.Name ? _signIns.Ana : _signIns.Bo).Passphrase;
}
