using MakerStudio.Core.Blending;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using PlannedBatch = MakerStudio.Services.Inventory.PlannedBatch;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>
/// Fills the studio through its services: the materials of Fig (fragrance 12 %, DPG 5 %, alcohol 83 % by weight), lots at
/// round prices, the released formula and its bottle.
/// </summary>
public sealed class QuinceYard(IStudio host)
{
    public const string Supplier = "Alder Supply";

    private readonly Dictionary<string, Guid> _materials = [];

    /// <summary>100 mL × 0.815 g/mL, from which a fill of 82.0 g follows with 0.5 g over.</summary>
    private const decimal FigDensity = 0.815m;

    public Guid FigId { get; private set; }
    public Guid FigVersionId { get; private set; }
    public Guid BottleSizeId { get; private set; }

    public Guid Material(string name) => _materials[name];

    /// <summary>Overhead of the worked batch: 9.00 a batch and 0.15 a unit, 18.00 an hour.</summary>
    public async Task SetCostsAsync()
    {
        var settings = host.Get<StudioSettings>();
        var now = (await settings.ReadAsync())!;
        (await settings.ChangeAsync(host.Ana, new ChangeStudio
        {
            Name = now.Name, TimeZone = now.TimeZone, Culture = now.Culture, LabourRatePerHour = 18m, OverheadPerBatch = 9m, OverheadPerUnit = 0.15m,
            TolerancePercent = 0.5m, ToleranceDivisions = 2, RoundBatchUpToMilligrams = 100_000, Version = now.Version,
        })).Expect();
    }

    public async Task AddMaterialsAsync()
    {
        await AddAsync("Fig fragrance oil", MaterialKind.FragranceOil, 0.98m);
        await AddAsync("Alcohol 99.5 % vol", MaterialKind.Solvent, 0.79m);
        await AddAsync("DPG", MaterialKind.Fixative, 1.02m);
        await AddAsync("Bottle 100 mL", MaterialKind.Bottle);
        await AddAsync("Sprayer", MaterialKind.Sprayer);
        await AddAsync("Label Fig", MaterialKind.Label);
        await AddAsync("Carton", MaterialKind.Carton);
    }

    /// <summary>One delivery of one material at a price for the whole line, without freight.</summary>
    /// <returns>The lot's code.</returns>
    public async Task<string> ReceiveAsync(string material, decimal quantity, AmountUnit unit, decimal price, DateOnly? expires = null)
    {
        var day = DateOnly.FromDateTime(host.Get<TimeProvider>().GetUtcNow().AddDays(-30).UtcDateTime);
        var posted = (await host.Get<Deliveries>().PostAsync(host.Ana, new PostDelivery
        {
            SupplierId = await host.ValueAsync<Guid>("select id from suppliers where name = $1", Supplier), ReceivedOn = day, FreightBasis = FreightBasis.Value,
            Lines = [new DeliveryLineTyped { MaterialId = Material(material), Quantity = quantity, Unit = unit, Price = price, ExpiresOn = expires, ConfirmedUnitPrice = price / quantity }],
        })).Expect();
        return posted.Lots.Single().Code;
    }

    /// <summary>Fig v1 and a 100 mL bottle with its packaging.</summary>
    public async Task ReleaseFigAsync()
    {
        var started = (await host.Get<Formulas>().NewAsync(host.Ana, new NewFormula { Name = "Fig", ProductKind = "room-spray-alcohol" })).Expect();
        (FigId, FigVersionId) = (started.FormulaId, started.VersionId);
        var draft = (await host.Get<Formulas>().ReadAsync(FigId))!.Versions.Single();
        var kept = (await host.Get<Versions>().KeepAsync(host.Ana, new KeepDraft
        {
            VersionId = FigVersionId, Version = draft.Version, Method = "Fragrance into DPG, then alcohol; close and stir 5 minutes.",
            CureMinHours = 48, CureIdealHours = 336, ExpectedLossPercent = 1.5m,
            Lines = [Line("Fig fragrance oil", 12m), Line("DPG", 5m), Line("Alcohol 99.5 % vol", 83m)],
        })).Expect();
        var dense = (await host.Get<Versions>().MeasureAsync(host.Ana, new MeasureVersion { VersionId = FigVersionId, GramsPerMillilitre = FigDensity, Version = kept.Version })).Expect();
        (await host.Get<Versions>().ReleaseAsync(host.Ana, new ReleaseVersion { VersionId = FigVersionId, Version = dense.Version })).Expect();
        BottleSizeId = (await host.Get<Sizes>().AddAsync(host.Ana, new AddSize
        {
            FormulaId = FigId, Name = "100 mL bottle", Nominal = 100m, OverfillGrams = 0.5m,
            Parts = [.. new[] { "Bottle 100 mL", "Sprayer", "Label Fig", "Carton" }.Select(p => new SizePart { MaterialId = Material(p) })],
        })).Expect().SizeId;
    }

    /// <summary>Everything a batch of 48 bottles takes, with some to spare.</summary>
    public async Task FillShelvesAsync()
    {
        await ReceiveAsync("Fig fragrance oil", 5m, AmountUnit.Kilogram, 336.87m);
        await ReceiveAsync("Alcohol 99.5 % vol", 20m, AmountUnit.Kilogram, 172.88m);
        await ReceiveAsync("DPG", 2m, AmountUnit.Kilogram, 22.40m);
        await ReceiveAsync("Bottle 100 mL", 500m, AmountUnit.Each, 432.40m);
        await ReceivePackagingAsync();
    }

    /// <summary>What a bottle is closed, labelled and packed with; the bottles come with another delivery.</summary>
    public async Task ReceivePackagingAsync()
    {
        await ReceiveAsync("Sprayer", 500m, AmountUnit.Each, 210m);
        await ReceiveAsync("Label Fig", 500m, AmountUnit.Each, 95m);
        await ReceiveAsync("Carton", 500m, AmountUnit.Each, 180m);
    }

    /// <summary>A batch of Fig by mass, being weighed by somebody.</summary>
    /// <returns>Its code.</returns>
    public async Task<(Guid Id, string Code)> StartBatchAsync(Actor by, decimal grams)
    {
        var planned = await PlanAsync(grams);
        (await host.Get<Batches>().StartWeighingAsync(by, new StartWeighing { BatchId = planned.BatchId })).Expect();
        return (planned.BatchId, planned.Code);
    }

    public async Task<PlannedBatch> PlanAsync(decimal grams, int? bottles = null) => (await host.Get<Batches>().PlanAsync(host.Ana, new PlanBatch
    {
        FormulaVersionId = FigVersionId, TargetMilligrams = Mass.FromGrams(grams).Milligrams,
        FormulaSizeId = bottles is null ? null : BottleSizeId, PlannedUnits = bottles,
    })).Expect();

    /// <summary>Weighs every line to its target from the suggested lots.</summary>
    public async Task WeighAllAsync(Actor by, Guid batchId, string code)
    {
        var sheets = host.Get<WeighSheets>();
        while ((await sheets.SheetAsync(code))?.Current is { Suggested: { } lot } line)
        {
            (await sheets.RecordAsync(by, new RecordWeighing { BatchId = batchId, LineId = line.LineId, LotId = lot.LotId, NetMilligrams = line.RemainingMilligrams })).Expect();
        }
    }

    /// <summary>Confirms the last addition: the cure begins.</summary>
    public async Task RestAsync(Actor by, Guid batchId) =>
        (await host.Get<WeighSheets>().ConfirmLastAdditionAsync(by, new ConfirmLastAddition { BatchId = batchId, StirredConfirmed = true, Place = "Cupboard 1" })).Expect();

    public async Task PassAsync(Actor by, Guid batchId) => (await host.Get<CureShelf>().RecordCheckAsync(by, new RecordCheck
    {
        BatchId = batchId, Strength = 4, Clarity = Clarity.Clear, Character = "round, green gone", Verdict = CheckVerdict.Passed,
    })).Expect();

    /// <summary>A material that somebody typed on its page already is taken as it is.</summary>
    private async Task AddAsync(string name, MaterialKind kind, decimal? density = null)
    {
        if (await host.ValueAsync<int>("select count(*) from materials where name = $1", name) > 0)
        {
            _materials[name] = await host.ValueAsync<Guid>("select id from materials where name = $1", name);
            return;
        }

        _materials[name] = (await host.Get<Materials>().AddAsync(host.Ana, new AddMaterial
        {
            Name = name, Kind = kind, StockedIn = MaterialKinds.DefaultStockUnit(kind), Density = density, DensityAtCelsius = density is null ? null : 20m,
            Suppliers = [new SupplierLine { Name = Supplier, LeadTimeDays = 10 }],
        })).Expect().Id;
    }

    private KeptLine Line(string material, decimal percent) => new() { MaterialId = Material(material), Amount = percent, Basis = LineBasis.PercentByWeight };
}
