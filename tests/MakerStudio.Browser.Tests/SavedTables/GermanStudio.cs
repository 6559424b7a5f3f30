using MakerStudio.Browser.Tests.EveryPage;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Browser.Tests.SavedTables;

/// <summary>
/// The sample studio with German marks, so that a comma for decimals or a day written 25.11.2026 would show in a file,
/// and with a supplier whose name a spreadsheet would run.
/// </summary>
public sealed class GermanStudio : SampleHost
{
    public const string HostileSupplier = "=HYPERLINK(\"http://studio.example\",\"Alder\")";

    protected override async Task SettleInAsync()
    {
        await base.SettleInAsync();
        var settings = App.Get<StudioSettings>();
        var now = (await settings.ReadAsync())!;
        (await settings.ChangeAsync(Ana, new ChangeStudio
        {
            Name = now.Name, Address = now.Address, Phone = now.Phone, TimeZone = now.TimeZone, Culture = "de-DE", LabourRatePerHour = now.LabourRatePerHour,
            OverheadPerBatch = now.OverheadPerBatch, OverheadPerUnit = now.OverheadPerUnit, TolerancePercent = now.TolerancePercent,
            ToleranceDivisions = now.ToleranceDivisions, RoundBatchUpToMilligrams = now.RoundBatchUpToMilligrams, Version = now.Version,
        })).Expect();
        (await App.Get<Suppliers>().AddAsync(Ana, new AddSupplier { Name = HostileSupplier })).Expect();
    }
}
