using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

public class MaterialsTests
{
    [Fact]
    public async Task Add_EverythingStated_ReadsBackAsTyped()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();

        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;

        var form = (await materials.FormAsync(id))!;
        Assert.Equal("Ethanol 99.5 % vol, denatured", form.Name);
        Assert.Equal("64-17-5", form.Cas);
        Assert.Equal((0.79m, 20m), (form.Density, form.DensityAtCelsius));
        Assert.Equal((199m, AlcoholBasis.UsProof), (form.AlcoholValue, form.AlcoholBasis));
        Assert.Equal((13m, 730m, 365m, 4000.5m, 0.6m), (form.FlashPointCelsius, form.ShelfLifeDays, form.LifeAfterOpeningDays, form.ReorderPoint, form.TwentyDropsGrams));
        Assert.Equal([PaperKind.Sds], form.RequiredPapers);
        Assert.Equal(new SupplierLine { Name = "Alder Supply", Code = "ETH-995", LeadTimeDays = 6, PackNote = "20 kg canister", Minimum = 20_000m, Pack = 20_000m, Row = Guid.Empty }, Assert.Single(form.Suppliers) with { Row = Guid.Empty });
        var view = (await materials.ViewAsync(id))!;
        Assert.Equal(30m, view.DropMilligrams); // 0.6 g over 20 drops
        Assert.Equal([PaperKind.Sds], view.Missing);
        Assert.Equal(("Ana", "Added Ethanol 99.5 % vol, denatured"), (view.Acts.Single().Who, view.Acts.Single().What));
    }

    [Fact]
    public async Task Add_SameRequestTwice_AddsOne()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var request = Ethanol();

        var first = (await materials.AddAsync(studio.Ana, request)).Expect();

        Assert.Equal(first, (await materials.AddAsync(studio.Ana, request)).Expect());
        Assert.Single(await materials.FindAsync(new MaterialSearch()));
    }

    [Fact]
    public async Task Add_NameOnTheShelfAlready_AsksForWhatTellsThemApart()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        (await materials.AddAsync(studio.Ana, Ethanol())).Expect();

        var refusal = (await materials.AddAsync(studio.Bo, Ethanol() with { Name = " ETHANOL 99.5 % vol, Denatured " })).Refusal;

        Assert.IsType<NameTaken>(refusal);
        Assert.Contains("tells them apart", refusal.ToDo, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_OneNewNameTenTimesAtOnce_AddsOneMaterialAndOneSupplier()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => Task.Run(() => materials.AddAsync(studio.Ana, Ethanol()))));

        Assert.Single(outcomes, o => o is Done<MaterialAdded>);
        Assert.Equal(9, outcomes.Count(o => o.Refusal is NameTaken));
        Assert.Single(await studio.Get<Suppliers>().ListAsync());
    }

    [Theory]
    [InlineData("64-17-6", nameof(MaterialForm.Cas))]
    [InlineData("not a number", nameof(MaterialForm.Cas))]
    public async Task Add_CasThatDoesNotAgree_IsRefusedAtItsField(string cas, string field)
    {
        await using var studio = await TestStudio.NewAsync();
        var refusal = (await studio.Get<Materials>().AddAsync(studio.Ana, Ethanol() with { Cas = cas })).Refusal;
        Assert.Equal(field, Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Field);
    }

    public static TheoryData<string, MaterialForm> OutOfRange => new()
    {
        { nameof(MaterialForm.Name), Ethanol() with { Name = " " } },
        { nameof(MaterialForm.Kind), Ethanol() with { Kind = null } },
        { nameof(MaterialForm.Kind), Ethanol() with { Kind = (MaterialKind)99 } },
        { nameof(MaterialForm.Density), Ethanol() with { Density = 790m } }, // kg/m³ typed as g/mL
        { nameof(MaterialForm.DensityAtCelsius), Ethanol() with { DensityAtCelsius = null } },
        { nameof(MaterialForm.DensityAtCelsius), Ethanol() with { Density = null } },
        { nameof(MaterialForm.AlcoholBasis), Ethanol() with { AlcoholBasis = null } }, // a bare number
        { nameof(MaterialForm.AlcoholValue), Ethanol() with { AlcoholValue = null } },
        { nameof(MaterialForm.AlcoholValue), Ethanol() with { AlcoholValue = 201m } },
        { nameof(MaterialForm.AlcoholValue), Ethanol() with { AlcoholValue = 100.5m, AlcoholBasis = AlcoholBasis.PercentVolume } },
        { nameof(MaterialForm.FlashPointCelsius), Ethanol() with { FlashPointCelsius = -274m } },
        { nameof(MaterialForm.ShelfLifeDays), Ethanol() with { ShelfLifeDays = 1.5m } },
        { nameof(MaterialForm.LifeAfterOpeningDays), Ethanol() with { LifeAfterOpeningDays = 0m } },
        { nameof(MaterialForm.ReorderPoint), Ethanol() with { ReorderPoint = -1m } },
        { nameof(MaterialForm.ReorderPoint), Ethanol() with { ReorderPoint = 0.0001m } },
        { nameof(MaterialForm.ReorderPoint), Ethanol() with { StockedIn = StockUnit.Each, TwentyDropsGrams = null, ReorderPoint = 1.5m } },
        { nameof(MaterialForm.TwentyDropsGrams), Ethanol() with { TwentyDropsGrams = 600m } }, // milligrams typed as grams
        { nameof(MaterialForm.Suppliers), Ethanol() with { Suppliers = [new() { Name = "Alder" }, new() { Name = "alder " }] } },
        { "Suppliers[0].Name", Ethanol() with { Suppliers = [new() { Code = "ETH" }] } },
        { "Suppliers[0].Minimum", Ethanol() with { Suppliers = [new() { Name = "Alder", Minimum = 0 }] } },
        { "Suppliers[0].Pack", Ethanol() with { Suppliers = [new() { Name = "Alder", Pack = 0.0005m }] } },
        { "Suppliers[0].LeadTimeDays", Ethanol() with { Suppliers = [new() { Name = "Alder", LeadTimeDays = -1 }] } },
    };

    [Theory]
    [MemberData(nameof(OutOfRange), DisableDiscoveryEnumeration = true)]
    public void Shape_OutOfRange_IsNamedAtItsField(string field, MaterialForm form)
    {
        var problems = new MaterialFormValidator().Validate(form).Errors;
        Assert.Equal([field], problems.Select(p => p.PropertyName).Distinct());
    }

    [Fact]
    public async Task Change_FromAnOldVersion_ShowsBothAndChangesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        var anas = (await materials.FormAsync(id))!;
        var bos = (await materials.FormAsync(id))!;
        var opened = bos.Copy<ChangeMaterial>();
        (await materials.ChangeAsync(studio.Ana, anas with { Density = 0.7907m, FlashPointCelsius = 14m })).Expect();
        bos.Density = 0.789m;
        bos.Notes = "Smells of nothing much.";

        var stale = Assert.IsType<MaterialStale>((await materials.ChangeAsync(studio.Bo, bos)).Refusal);

        Assert.Equal("Ana", stale.ChangedBy);
        var differences = MaterialFields.Compare(opened, stale.Theirs, bos);
        Assert.Equal(["Density", "Flash point", "Notes"], differences.Select(d => d.Field.Label));
        Assert.Equal(("0.79 g/mL at 20 °C", "0.7907 g/mL at 20 °C", "0.789 g/mL at 20 °C"), (differences[0].Opened, differences[0].Theirs, differences[0].Yours));
        Assert.Equal([false, true, false], differences.Select(d => d.OnlyTheirs));
        Assert.Equal(0.7907m, (await materials.FormAsync(id))!.Density);

        // Bo keeps what he typed, takes what only Ana changed, and saves over her version knowingly.
        differences[1].Field.Take(stale.Theirs, bos);
        (await materials.ChangeAsync(studio.Bo, bos with { Version = stale.Theirs.Version })).Expect();
        var now = (await materials.FormAsync(id))!;
        Assert.Equal((0.789m, 14m, "Smells of nothing much."), (now.Density, now.FlashPointCelsius, now.Notes));
        Assert.Contains("density 0.7907 g/mL at 20 °C → 0.789 g/mL at 20 °C", (await materials.ViewAsync(id))!.Acts[0].What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_OfSuppliersAlone_StillMakesAnOpenFormStale()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        var bos = (await materials.FormAsync(id))!;
        (await materials.ChangeAsync(studio.Ana, (await materials.FormAsync(id))! with { Suppliers = [new() { Name = "Birch & Co", Code = "B1" }] })).Expect();

        Assert.IsType<MaterialStale>((await materials.ChangeAsync(studio.Bo, bos)).Refusal);
        Assert.Equal(["Birch & Co"], (await materials.FormAsync(id))!.Suppliers.Select(s => s.Name));
    }

    [Fact]
    public async Task Change_TwentyAtOnceFromOneVersion_ExactlyOneIsSaved()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        var form = (await materials.FormAsync(id))!;

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 20).Select(n => Task.Run(() =>
            materials.ChangeAsync(studio.Ana, form with { RequestId = Guid.CreateVersion7(), FlashPointCelsius = n }))));

        Assert.Single(outcomes, o => o is Done<Nothing>);
        Assert.Equal(19, outcomes.Count(o => o.Refusal is MaterialStale));
    }

    [Fact]
    public async Task Change_StockedInOnceALotExists_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        var form = (await materials.FormAsync(id))!;
        (await materials.ChangeAsync(studio.Ana, form with { StockedIn = StockUnit.Each, ReorderPoint = 5, TwentyDropsGrams = null })).Expect();
        form = (await materials.FormAsync(id))!;
        (await materials.ChangeAsync(studio.Ana, form with { RequestId = Guid.CreateVersion7(), StockedIn = StockUnit.Gram })).Expect();
        await studio.LotAsync(id, "E-1", 20_000m, 0.008644m);
        form = (await materials.FormAsync(id))!;

        var refusal = (await materials.ChangeAsync(studio.Ana, form with { RequestId = Guid.CreateVersion7(), StockedIn = StockUnit.Each })).Refusal;

        Assert.IsType<StockedInFixed>(refusal);
        Assert.True(await materials.IsStockUnitFixedAsync(id));
        Assert.Equal(StockUnit.Gram, (await materials.FormAsync(id))!.StockedIn);
    }

    [Fact]
    public async Task Archive_StockOnHand_IsRefusedWithTheLots()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.LotAsync(id, "P-1", 4_700m, 0.067374m);
        await studio.LotAsync(id, "P-3", 5_000m, 0.07m, status: LotStatus.Quarantine);

        var refusal = (await materials.ArchiveAsync(studio.Ana, new ArchiveMaterial { MaterialId = id })).Refusal!;

        Assert.IsType<StockOnHand>(refusal);
        Assert.Equal("Fig fragrance oil cannot be archived: 9,700.0 g is on hand in P-1, P-3.", refusal.Happened);
        Assert.False((await materials.RowAsync(id))!.IsArchived);
    }

    [Fact]
    public async Task Archive_StandsInAFormula_AsksAndThenKeepsHistory()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (id, 12m));

        var refusal = Assert.IsType<FormulasUseIt>((await materials.ArchiveAsync(studio.Ana, new ArchiveMaterial { MaterialId = id })).Refusal);
        Assert.Equal(["Fig v1"], refusal.Formulas);

        (await materials.ArchiveAsync(studio.Ana, new ArchiveMaterial { MaterialId = id, AlthoughFormulasUseIt = true })).Expect();
        Assert.Empty(await materials.FindAsync(new MaterialSearch()));
        Assert.True(Assert.Single(await materials.FindAsync(new MaterialSearch { ArchivedToo = true })).IsArchived);
        var use = Assert.Single((await materials.ViewAsync(id))!.Formulas);
        Assert.Equal(("Fig", 1, 0.12m, false), (use.Name, use.Number, use.Fraction, use.IsOld));

        (await materials.RestoreAsync(studio.Bo, new RestoreMaterial { MaterialId = id })).Expect();
        Assert.Equal(["Bo", "Ana"], (await materials.ViewAsync(id))!.Acts.Select(a => a.Who));
        Assert.Single(await materials.FindAsync(new MaterialSearch()));
    }

    [Fact]
    public async Task Archive_PlannedBatchCountsOnIt_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var version = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (id, 12m));
        await using (var db = studio.Db())
        {
            db.Batches.Add(new Batch
            {
                Code = "RS-1", FormulaVersionId = version, ScentName = "Fig", VersionNumber = 1, ProductKind = "room-spray-alcohol", TargetMilligrams = 4_000_000,
                State = BatchState.Planned, PlannedById = studio.Ana.PersonId, PlannedAt = studio.Clock.GetUtcNow(),
                Lines = { new BatchLine { Position = 1, MaterialId = id, MaterialName = "Fig fragrance oil", Fraction = 0.12m, PlannedMilligrams = 480_000, TargetMilligrams = 480_000 } },
            });
            await db.SaveChangesAsync();
        }

        var refusal = (await studio.Get<Materials>().ArchiveAsync(studio.Ana, new ArchiveMaterial { MaterialId = id, AlthoughFormulasUseIt = true })).Refusal;
        Assert.Equal(["RS-1"], Assert.IsType<BatchesNeedIt>(refusal).Batches);
    }

    [Fact]
    public async Task Restore_NameGivenAwayMeanwhile_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        var first = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        (await materials.ArchiveAsync(studio.Ana, new ArchiveMaterial { MaterialId = first })).Expect();
        (await materials.AddAsync(studio.Ana, Ethanol())).Expect();

        Assert.IsType<NameTaken>((await materials.RestoreAsync(studio.Ana, new RestoreMaterial { MaterialId = first })).Refusal);
    }

    [Fact]
    public async Task Suppliers_Renamed_ReadNewOnEveryMaterial()
    {
        await using var studio = await TestStudio.NewAsync();
        var (materials, suppliers) = (studio.Get<Materials>(), studio.Get<Suppliers>());
        var id = (await materials.AddAsync(studio.Ana, Ethanol())).Expect().Id;
        (await suppliers.AddAsync(studio.Ana, new AddSupplier { Name = "Birch & Co" })).Expect();
        var alder = (await suppliers.ListAsync()).Single(s => s.Name == "Alder Supply");
        Assert.Equal(1, alder.Materials);

        Assert.IsType<SupplierNameTaken>((await suppliers.ChangeAsync(studio.Ana, new ChangeSupplier { SupplierId = alder.Id, Name = "birch & co", Version = alder.Version })).Refusal);
        (await suppliers.ChangeAsync(studio.Ana, new ChangeSupplier { SupplierId = alder.Id, Name = "Alder Supply Ltd", Version = alder.Version })).Expect();

        Assert.Equal("Alder Supply Ltd", (await materials.FormAsync(id))!.Suppliers.Single().Name);
        Assert.IsType<Stale>((await suppliers.ChangeAsync(studio.Bo, new ChangeSupplier { SupplierId = alder.Id, Name = "Alder", Version = alder.Version })).Refusal);
    }

    internal static AddMaterial Ethanol() => new()
    {
        Name = "Ethanol 99.5 % vol, denatured", Kind = MaterialKind.Solvent, Cas = "64-17-5", Density = 0.79m, DensityAtCelsius = 20m,
        AlcoholValue = 199m, AlcoholBasis = AlcoholBasis.UsProof, FlashPointCelsius = 13m, ShelfLifeDays = 730, LifeAfterOpeningDays = 365,
        ReorderPoint = 4000.5m, TwentyDropsGrams = 0.6m, RequiredPapers = [PaperKind.Sds],
        Suppliers = [new() { Name = "Alder Supply", Code = "ETH-995", LeadTimeDays = 6, PackNote = "20 kg canister", Minimum = 20_000m, Pack = 20_000m }],
    };
}
