using MakerStudio.Browser.Tests.Host;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Browser.Tests.EveryPage;

/// <summary>The sample studio: six weeks of two people at work, so that every page has something to show.</summary>
public sealed class SampleHost : StudioHost
{
    private readonly SampleSignIns _signIns = SampleSignIns.Draw();

    /// <summary>Wed 25 Nov 2026, 10:00 in Berlin.</summary>
    protected override DateTimeOffset Begins => new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    protected override async Task SettleInAsync()
    {
        (await App.Get<SampleStudio>().MakeAsync(_signIns)).Expect();
        await KnowPeopleAsync();
        await WeighBeforeTheReceiptAsync();
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

    protected override string PassphraseOf(string person) => (person == _signIns.Ana.Name ? _signIns.Ana : _signIns.Bo).Passphrase;
}
