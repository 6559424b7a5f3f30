using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using MakerStudio.Services.Tests.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Exchange;

/// <summary>One sample, made once, looked at from all sides.</summary>
public sealed class SampleStudioFixture : IAsyncLifetime
{
    internal TestStudio Studio { get; private set; } = null!;
    internal SampleSignIns SignIns { get; } = SampleSignIns.Draw();
    internal SampleMade Made { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        Studio = await TestStudio.NewAsync();
        await Studio.EmptyAsync();
        Made = (await Studio.Get<SampleStudio>().MakeAsync(SignIns)).Expect();
    }

    public async Task DisposeAsync() => await Studio.DisposeAsync();
}

public class SampleStudioTests(SampleStudioFixture sample, Xunit.Abstractions.ITestOutputHelper output) : IClassFixture<SampleStudioFixture>
{
    private TestStudio Studio => sample.Studio;

    [Fact]
    public async Task Make_EmptyDatabase_FillsEveryRoom()
    {
        output.WriteLine($"{sample.Made.Acts} acts in {sample.Made.Took.TotalSeconds:0.0} s");
        await using var db = Studio.Db();

        Assert.InRange(await db.Materials.CountAsync(), 25, 60);
        Assert.InRange(await db.Lots.CountAsync(), 40, 80);
        Assert.InRange(await db.Formulas.CountAsync(), 8, 20);
        Assert.InRange(await db.Formulas.Select(f => f.ProductKind).Distinct().CountAsync(), 6, 8);
        Assert.Equal(Enum.GetValues<BatchState>(), (await db.Batches.Select(b => b.State).Distinct().ToListAsync()).Order());
        Assert.Equal(
            [LotStatus.Quarantine, LotStatus.Released, LotStatus.OnHold],
            (await db.Lots.Select(l => l.Status).Distinct().ToListAsync()).OrderBy(s => (int)s));
        Assert.All(
            await db.Materials.Where(m => m.Density != null).Select(m => new { m.Name, m.DensityAtCelsius, m.Notes }).ToListAsync(),
            m => Assert.True(m.DensityAtCelsius is not null && m.Notes!.Contains("ensity", StringComparison.Ordinal), m.Name));
    }

    [Fact]
    public async Task Make_EveryPouredMaterial_HasASafetySheetThatWasReadWhole()
    {
        await using var db = Studio.Db();
        MaterialKind[] without = [MaterialKind.DryBotanical, MaterialKind.PreBlend];
        var poured = (await db.Materials.ToListAsync()).Where(m => !MaterialKinds.IsPackaging(m.Kind) && !without.Contains(m.Kind)).ToList();
        var facts = await AssessedMaterials.OfAsync(db, poured.Select(m => m.Id), default);

        Assert.All(poured, m => Assert.NotNull(facts.Materials[m.Id].Hazards?.Classes));
        // Every line of the lists became a row.
        Assert.Equal(10 + 8 + 6 + 5 + 6 + 5, await db.MaterialSubstances.CountAsync());
        Assert.All(
            facts.Materials.Values.Where(m => m.Kind is MaterialKind.FragranceOil or MaterialKind.EssentialOil),
            m => Assert.True(m.Composition.Count >= 5 && m.Certificate!.MaxPercent.Count == 3, m.Name));
        Assert.True((await Markets.ReadAsync(db, new DateOnly(2026, 10, 26), default)).IsChosen);
    }

    [Fact]
    public async Task Make_FlammableStock_CountsShelfBatchesAndBottles()
    {
        var found = await Studio.Get<Stock>().FlammableAsync();

        Assert.Contains(found.Holdings, h => h.Where.StartsWith("/storeroom/", StringComparison.Ordinal) && h.Category == FlammableCategory.Category2);
        Assert.Contains(found.Holdings, h => h.Name.Contains("not filled yet", StringComparison.Ordinal) && h.Category == FlammableCategory.Category2);
        Assert.Contains(found.Holdings, h => h.Where.StartsWith("/finished/", StringComparison.Ordinal) && h.Category == FlammableCategory.Category2);
        Assert.All(found.Standings, s => Assert.InRange(s.Share, 0.05m, 2m));
        output.WriteLine(string.Join('\n', found.Standings.Select(s => $"{s.Name} {s.Share:p1} left out {string.Join(", ", s.LeftOut)}").Concat(found.Holdings.Select(h => $"{h.Name} {h.Category} {h.Milligrams} {h.Why}"))));
    }

    [Fact]
    public async Task Make_Books_AgreeWithTheirMovements() => Assert.Empty((await Studio.Get<Verify>().RunAsync()).Differences);

    /// <summary>The worked invoice and batch, computed by hand: 67.374/kg, 8.644/kg, 0.8648 each; 207.36268 for 46 to sell.</summary>
    [Fact]
    public async Task Make_WorkedInvoiceAndBatch_CostToTheLastDigit()
    {
        var delivery = (await Studio.Get<Deliveries>().FindAsync("D-1"))!;
        Assert.Equal([0.067374m, 0.008644m, 0.8648m], delivery.Lines.Select(l => l.UnitCost));

        var record = (await Studio.Get<BatchRecords>().FindAsync("RS-1"))!;
        Assert.Equal(
            [("P-2", 180_000L), ("P-1", 300_000L), ("D-1", 200_000L), ("E-1", 3_320_000L)],
            record.Weighed.Select(w => (w.LotCode!, w.NetMilligrams)));
        Assert.Equal(207.36268m, record.Fill!.Total);
        Assert.Equal((46, 4.5079m), (record.Fill.Saleable, Math.Round(record.Fill.PerSaleable!.Value, 4)));
    }

    [Fact]
    public async Task Make_EveryAct_IsAnasOrBosWithinTheLastSixWeeks()
    {
        var people = (await Studio.Get<People>().ListAsync()).ToDictionary(p => p.Id, p => p.Name);
        Assert.Equal(["Ana", "Bo"], people.Values.Order());
        await using var db = Studio.Db();
        var now = Studio.Clock.GetUtcNow();
        var stamps = (await db.Acts.Select(a => new { a.PersonId, a.At }).ToListAsync())
            .Concat(await db.Movements.Select(m => new { m.PersonId, m.At }).ToListAsync())
            .Concat(await db.LotEvents.Select(e => new { e.PersonId, e.At }).ToListAsync())
            .Concat(await db.Weighings.Select(w => new { w.PersonId, w.At }).ToListAsync()).ToList();

        Assert.All(stamps, s => Assert.Contains(s.PersonId, people.Keys));
        Assert.All(stamps, s => Assert.InRange(s.At, now.AddDays(-42), now));
        Assert.All(people.Keys, id => Assert.True(stamps.Count(s => s.PersonId == id) > 100));
    }

    [Fact]
    public async Task Make_Today_HasSomethingOfEachToDo()
    {
        var shelf = (await Studio.Get<CureShelf>().RowsAsync()).ToDictionary(r => r.Code, r => r.State);
        Assert.Equal(CureState.DueForCheck, shelf["RS-2"]);
        Assert.Equal(CureState.DueForCheck, shelf["RD-2"]);
        Assert.Equal(CureState.OnHold, shelf["LN-2"]);
        Assert.Equal(CureState.Ready, shelf["WM-1"]);
        Assert.Equal(CureState.Resting, shelf["SA-1"]);
        Assert.Equal(CureState.Resting, shelf["A-2"]);

        var bench = (await Studio.Get<Batches>().OnTheBenchAsync()).ToDictionary(r => r.Code);
        Assert.Equal(("Bo", 1, 3), (bench["RS-3"].WeighingBy, bench["RS-3"].LinesDone, bench["RS-3"].Lines));
        Assert.Equal(["CN-2"], bench.Values.Where(b => b.Shortages.Count > 0).Select(b => b.Code));
        Assert.Equal("LN-2", Assert.Single(await Studio.Get<Stock>().PendingAsync()).BatchCode);

        var bergamot = (await Studio.Get<Lots>().FindAsync("N-1"))!;
        Assert.Equal(bergamot.Today.AddDays(-1), bergamot.UseBy!.On);
        Assert.True(bergamot.OnHand > 0);
        Assert.Contains((await Studio.Get<Stock>().ListAsync()), r => r.Name == "Sprayer 24/410, black" && r is { Available: 0, OrderNow: true });
    }

    [Fact]
    public async Task Make_Story_TellsADeviationAReversalACountAndADraft()
    {
        await using var db = Studio.Db();
        Assert.Equal(DeviationChoice.Corrected, (await db.Deviations.SingleAsync()).Choice);
        Assert.Equal(1, await db.Movements.CountAsync(m => m.Kind == MovementKind.Reversal));
        Assert.Equal(1, await db.Movements.CountAsync(m => m.Reason == AdjustmentReason.Evaporation));
        Assert.Equal(2, await db.Movements.CountAsync(m => m.Reason == AdjustmentReason.Count));
        Assert.True(await db.Movements.AnyAsync(m => m.Lot!.Code == "A-1" && m.Kind == MovementKind.Use));
        var fig = await db.FormulaVersions.Include(v => v.Lines).Where(v => v.Formula!.Name == "Fig").OrderBy(v => v.Number).ToListAsync();
        Assert.Equal([FormulaState.Released, FormulaState.Released, FormulaState.Released, FormulaState.Draft], fig.Select(v => v.State));
        Assert.Contains(fig[3].Lines, l => l.Amount == 11.10m);
    }

    [Fact]
    public async Task Make_SignIns_OpenTheStudio()
    {
        var passphrases = Studio.Get<Passphrases>();
        Assert.Equal(PersonRole.Owner, (await passphrases.CheckAsync("Ana", sample.SignIns.Ana.Passphrase)).Expect().Role);
        Assert.Equal(PersonRole.Maker, (await passphrases.CheckAsync("Bo", sample.SignIns.Bo.Passphrase)).Expect().Role);
        Assert.NotEqual(sample.SignIns, SampleSignIns.Draw());
    }

    [Fact]
    public async Task Make_Again_IsRefusedAndChangesNothing()
    {
        await using var db = Studio.Db();
        var before = (await db.Acts.CountAsync(), await db.Movements.CountAsync());

        var refused = (await Studio.Get<SampleStudio>().MakeAsync(SampleSignIns.Draw())).Refusal;

        Assert.Equal(new NotEmpty("Quince Yard Studio"), refused);
        Assert.Equal(before, (await db.Acts.CountAsync(), await db.Movements.CountAsync()));
        Assert.Equal(new SampleFound(SampleState.Made, "Quince Yard Studio"), await Studio.Get<SampleStudio>().FindAsync());
    }
}

public class SampleStudioElsewhereTests
{
    [Fact]
    public async Task Make_RealStudio_IsRefusedAndLeftAlone()
    {
        await using var studio = await TestStudio.NewAsync();

        Assert.IsType<NotEmpty>((await studio.Get<SampleStudio>().MakeAsync(SampleSignIns.Draw())).Refusal);

        Assert.Equal(SampleState.OtherStudio, (await studio.Get<SampleStudio>().FindAsync()).State);
        await using var db = studio.Db();
        Assert.Empty(await db.Materials.ToListAsync());
    }

    [Fact]
    public async Task Find_BrokenOffWhileMaking_SaysSo()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.EmptyAsync();
        var sample = studio.Get<SampleStudio>();
        Assert.Equal(new SampleFound(SampleState.Empty, null), await sample.FindAsync());
        var link = (await studio.Get<FirstRun>().IssueLinkAsync())!;
        (await studio.Get<FirstRun>().SetUpAsync(Entry.SetUp(link) with { Name = SampleStudio.NameWhileMade, IsSample = true })).Expect();

        Assert.Equal(SampleState.HalfMade, (await sample.FindAsync()).State);
        Assert.IsType<NotEmpty>((await sample.MakeAsync(SampleSignIns.Draw())).Refusal);
    }

    /// <summary>Ten past midnight in Berlin, two days after the clocks went forward: the order of the story holds.</summary>
    [Fact]
    public async Task Make_JustAfterMidnight_EndsAtNow()
    {
        await using var studio = await TestStudio.NewAsync(new DateTimeOffset(2026, 3, 30, 22, 10, 0, TimeSpan.Zero));
        await studio.EmptyAsync();

        (await studio.Get<SampleStudio>().MakeAsync(SampleSignIns.Draw())).Expect();

        var shelf = (await studio.Get<CureShelf>().RowsAsync()).ToDictionary(r => r.Code, r => r.State);
        Assert.Equal((CureState.DueForCheck, CureState.Ready), (shelf["RS-2"], shelf["WM-1"]));
        Assert.Empty((await studio.Get<Verify>().RunAsync()).Differences);
    }
}
