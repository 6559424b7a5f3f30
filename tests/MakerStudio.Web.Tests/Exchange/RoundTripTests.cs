using System.Globalization;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Services.Tests.Accounts;
using MakerStudio.Web.Library;
using MakerStudio.Web.Storeroom;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Tests.Exchange;

/// <summary>What one studio saves as CSV another takes in: the sample studio moves into an empty one, which writes its numbers with commas.</summary>
public sealed class RoundTripTests : IAsyncLifetime
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;
    private TestStudio _from = default!;
    private TestStudio _to = default!;

    public async Task InitializeAsync()
    {
        _from = await TestStudio.NewAsync();
        await _from.EmptyAsync();
        (await _from.Get<SampleStudio>().MakeAsync(SampleSignIns.Draw())).Expect();
        _to = await TestStudio.NewAsync(_from.Clock.GetUtcNow());
        var german = await _to.Get<StudioSettings>().ReadAsync();
        (await _to.Get<StudioSettings>().ChangeAsync(_to.Ana, ChangeOf(german!) with { Culture = "de-DE" })).Expect();
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
    }

    public async Task DisposeAsync()
    {
        CultureInfo.CurrentCulture = _before;
        await _from.DisposeAsync();
        await _to.DisposeAsync();
    }

    [Fact]
    public async Task Sample_SavedAndBroughtInElsewhere_IsTheSame()
    {
        await MoveAsync(BringInKind.Materials, StoreroomSheets.Materials("EUR").Of((await _from.Get<Materials>().FormsAsync()).Select(f => new StoreroomSheets.MaterialLine(f, null)), TimeZoneInfo.Utc));
        await MoveAsync(BringInKind.Lots, StoreroomSheets.Lots("EUR").Of(await _from.Get<Lots>().AllAsync(), TimeZoneInfo.Utc));
        await MoveAsync(BringInKind.Formulas, LibrarySheets.Lines.Of(await _from.Get<Formulas>().LinesAsync(), TimeZoneInfo.Utc));

        Assert.Equal(await MaterialsAsync(_from), await MaterialsAsync(_to));
        Assert.Equal(await LotsAsync(_from), await LotsAsync(_to));
        Assert.Equal(await LinesAsync(_from), await LinesAsync(_to));
        var report = await _to.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, string.Join('\n', report.Differences));
    }

    private async Task MoveAsync(BringInKind kind, Sheet sheet)
    {
        using var saved = new MemoryStream();
        await CsvSheet.WriteAsync(sheet, saved);
        var files = _to.Get<BroughtFiles>();
        var file = (await files.AddAsync(_to.Ana, new AddBroughtFile { Kind = kind, Name = $"{kind}.csv" }, saved)).Expect();
        var seen = (await files.PreviewAsync(file.FileId, refusedOnly: true))!;
        Assert.True(seen.Refused == 0 && seen.Asks is null, string.Join('\n', seen.Rows.Select(r => $"{r.Line} {r.What}: {r.Why}").Prepend(seen.Asks?.ToString() ?? "")));
        (await files.TakeInAsync(_to.Bo, new TakeInFile { FileId = file.FileId })).Expect();
    }

    private static async Task<List<string>> MaterialsAsync(TestStudio studio) =>
        [.. (await studio.Get<Materials>().FormsAsync()).Select(m => string.Join(" / ", MaterialFields.All.Select(f => f.Read(m)))).Order(StringComparer.Ordinal)];

    /// <summary>What a lot cost is compared as it stands in the table: per kilogram or piece, to the decimals a table has.</summary>
    private static async Task<List<string>> LotsAsync(TestStudio studio) =>
    [
        .. (await studio.Get<Lots>().AllAsync()).Where(l => l.OnHand > 0).Select(l => FormattableString.Invariant(
            $"{l.Code} {l.MaterialName} {l.OnHand} {decimal.Round(PerKilogramOrPiece(l.UnitCost, l.Unit), SheetOf<LotRow>.MostDecimals):0.############} {l.Status} {l.StatusReason} {l.ReceivedOn:o} {l.OpenedOn:o} {l.ExpiresOn:o} {l.RetestOn:o} {l.Supplier} {l.SupplierLot} {l.Density:0.######} {l.TareMilligrams} {l.Shelf}")).Order(StringComparer.Ordinal),
    ];

    /// <summary>Version and state apart: what comes in is a draft.</summary>
    private static async Task<List<string>> LinesAsync(TestStudio studio) =>
    [
        .. (await studio.Get<Formulas>().LinesAsync()).Select(l => FormattableString.Invariant(
            $"{l.Formula} {l.ProductKind} {l.Position} {l.Material} {l.Amount:0.############} {l.Basis} {l.Note} {l.Fraction:0.######} {l.Method} {l.CureMinHours} {l.CureIdealHours} {l.ExpectedLossPercent:0.######}")).Order(StringComparer.Ordinal),
    ];

    private static ChangeStudio ChangeOf(StudioRow studio) => new()
    {
        Name = studio.Name, Address = studio.Address, Phone = studio.Phone, TimeZone = studio.TimeZone, Culture = studio.Culture, LabourRatePerHour = studio.LabourRatePerHour,
        OverheadPerBatch = studio.OverheadPerBatch, OverheadPerUnit = studio.OverheadPerUnit, TolerancePercent = studio.TolerancePercent, ToleranceDivisions = studio.ToleranceDivisions,
        RoundBatchUpToMilligrams = studio.RoundBatchUpToMilligrams, Version = studio.Version,
    };
}
