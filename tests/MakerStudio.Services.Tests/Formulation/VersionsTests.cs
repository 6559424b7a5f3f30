using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using static MakerStudio.Services.Tests.Formulation.LibraryFixture;

namespace MakerStudio.Services.Tests.Formulation;

public class VersionsTests
{
    [Fact]
    public async Task New_RoomSpray_CarriesTheDefaultsOfItsKind()
    {
        await using var studio = await TestStudio.NewAsync();
        var draft = (await studio.SheetAsync((await studio.NewFormulaAsync("Fig")).FormulaId)).Draft!;

        Assert.Equal((1, 48, 336, 1.5m), (draft.Number, draft.CureMinHours, draft.CureIdealHours, draft.ExpectedLossPercent));
        Assert.Equal("Ana", draft.CreatedBy);
        Assert.Empty(draft.Lines);
    }

    [Fact]
    public async Task Keep_OneToOneAndAHalfByWeight_Shows40And60()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.KeepAsync((await studio.NewFormulaAsync("Fig")).FormulaId,
            Line(ethanol, 1m, LineBasis.PartsByWeight), Line(fig, 1.5m, LineBasis.PartsByWeight));

        var worked = Worked.Of(sheet, sheet.Draft!);

        Assert.Equal([40.00m, 60.00m], worked.Shares.Select(s => s.PercentShown));
        Assert.Equal((0.60m, "w/w"), (worked.Load!.OfTotal, worked.Load.Of));
        Assert.False(worked.Load.IsUsual);
    }

    [Fact]
    public async Task Keep_OneToOneAndAHalfByVolume_Shows3496And6504()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.KeepAsync((await studio.NewFormulaAsync("Fig")).FormulaId,
            Line(ethanol, 1m, LineBasis.PartsByVolume), Line(fig, 1.5m, LineBasis.PartsByVolume));

        // 1 × 0.79 to 1.5 × 0.98 = 0.79 : 1.47.
        Assert.Equal([34.96m, 65.04m], Worked.Of(sheet, sheet.Draft!).Shares.Select(s => s.PercentShown));
    }

    [Fact]
    public async Task Keep_Thirds_SumToExactly100()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        await studio.KeepAsync(started.FormulaId, Line(fig, 1, LineBasis.PartsByWeight), Line(dpg, 1, LineBasis.PartsByWeight), Line(ethanol, 1, LineBasis.PartsByWeight));
        (await studio.ReleaseAsync(started.FormulaId)).Expect();

        var sheet = await studio.SheetAsync(started.FormulaId);

        Assert.Equal(1m, sheet.Released!.Lines.Sum(l => l.Fraction));
        Assert.Equal(100.00m, Worked.Of(sheet, sheet.Released).Shares.Sum(s => s.PercentShown));
    }

    [Fact]
    public async Task Keep_HalfTypedAndOutOfOrder_IsKeptExactlyAsTyped()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var first = await studio.KeepAsync(started.FormulaId, Line(fig, 11.10m), Line(dpg, 5.00m), Line(ethanol, 99m));
        var lines = first.Draft!.Lines;

        // Bottom line to the top by button, one taken out, the sum left wrong.
        var again = Keep(first.Draft, new KeptLine { LineId = lines[2].LineId, MaterialId = ethanol, Amount = null, Basis = LineBasis.PercentByWeight, Method = "In three parts, stirring" },
            new KeptLine { LineId = lines[0].LineId, MaterialId = fig, Amount = 11.10m, Basis = LineBasis.PercentByWeight });
        (await studio.Get<Versions>().KeepAsync(studio.Ana, again)).Expect();

        var kept = (await studio.SheetAsync(started.FormulaId)).Draft!;
        Assert.Equal([lines[2].LineId, lines[0].LineId], kept.Lines.Select(l => l.LineId));
        Assert.Equal("11.10", kept.Lines[1].Amount!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Null(kept.Lines[0].Amount);
        Assert.Equal("In three parts, stirring", kept.Lines[0].Method);
    }

    [Fact]
    public async Task Keep_StaleFromTheSecondPerson_ShowsBothAndLosesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var opened = (await studio.KeepAsync(started.FormulaId, Line(fig, 12), Line(ethanol, null))).Draft!;
        var versions = studio.Get<Versions>();
        (await versions.KeepAsync(studio.Bo, Keep(opened, Line(fig, 15), Line(ethanol, null)))).Expect();
        var mine = Keep(opened, Line(fig, 11), Line(dpg, 5), Line(ethanol, null));

        var stale = Assert.IsType<StaleDraft>((await versions.KeepAsync(studio.Ana, mine)).Refusal);

        Assert.Equal("Bo", stale.ChangedBy);
        Assert.Equal(15m, stale.Theirs.Lines[0].Amount);
        Assert.Equal(15m, (await studio.SheetAsync(started.FormulaId)).Draft!.Lines[0].Amount);
        // "Keep mine over it" is the same lines on the version just seen.
        (await versions.KeepAsync(studio.Ana, mine with { RequestId = Guid.CreateVersion7(), Version = stale.Theirs.Version })).Expect();
        Assert.Equal([11m, 5m, null], (await studio.SheetAsync(started.FormulaId)).Draft!.Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Keep_TwoAtOnceWithinOneTick_ExactlyOneIsTaken()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var opened = (await studio.SheetAsync(started.FormulaId)).Draft!;

        var outcomes = await Task.WhenAll(Enumerable.Range(1, 8).Select(n => Task.Run(() =>
            studio.Get<Versions>().KeepAsync(n % 2 == 0 ? studio.Ana : studio.Bo, Keep(opened, Line(fig, n), Line(ethanol, null))))));

        Assert.Single(outcomes, o => o is Done<DraftKept>);
        Assert.Equal(7, outcomes.Count(o => o.Refusal is StaleDraft));
        Assert.Equal(2, (await studio.SheetAsync(started.FormulaId)).Draft!.Lines.Count);
    }

    [Fact]
    public async Task Keep_LineOfAnotherFormula_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var other = await studio.KeepAsync((await studio.NewFormulaAsync("Orris Hall")).FormulaId, Line(fig, 10), Line(ethanol, null));
        var draft = (await studio.SheetAsync((await studio.NewFormulaAsync("Fig")).FormulaId)).Draft!;
        var stolen = Line(fig, 50);
        stolen.LineId = other.Draft!.Lines[0].LineId;

        Assert.IsType<Because>((await studio.Get<Versions>().KeepAsync(studio.Bo, Keep(draft, stolen))).Refusal);
        Assert.Equal(10m, (await studio.SheetAsync(other.Formula.Id)).Draft!.Lines[0].Amount);
    }

    [Theory]
    [InlineData("update formula_lines set amount = 1")]
    [InlineData("update formula_lines set fraction = 0.5")]
    [InlineData("delete from formula_lines")]
    [InlineData("update formula_versions set state = 'Draft'")]
    [InlineData("update formula_versions set cure_min_hours = 1")]
    [InlineData("delete from formula_versions")]
    public async Task Release_RawChangeAfterwards_IsRefusedByTheDatabase(string sql)
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(dpg, 5), Line(ethanol, null));
        await using var db = studio.Db();

        var refused = await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlRawAsync(sql));
        Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
    }

    [Fact]
    public async Task Release_Twice_And_KeepAfterwards_AreRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(dpg, 5), Line(ethanol, null));
        var v1 = sheet.Released!;

        Assert.Equal([0.12m, 0.05m, 0.83m], v1.Lines.Select(l => l.Fraction!.Value));
        Assert.Equal(0.79m, v1.Lines[2].DensityUsed);
        Assert.Equal("Ana", v1.ReleasedBy);
        Assert.IsType<AlreadyReleased>((await studio.Get<Versions>().KeepAsync(studio.Ana, Keep(v1, Line(fig, 100)))).Refusal);
        Assert.IsType<AlreadyReleased>((await studio.Get<Versions>().ReleaseAsync(
            studio.Bo, new ReleaseVersion { VersionId = v1.Id, Version = v1.Version })).Refusal);
    }

    [Fact]
    public async Task Edit_ReleasedVersion_MakesV2AndLeavesV1AsItWas()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12.00m), Line(dpg, 5), Line(ethanol, null));
        var before = sheet.Released!;
        var versions = studio.Get<Versions>();

        var v2 = (await versions.StartDraftAsync(studio.Bo, new StartDraft { FromVersionId = before.Id })).Expect();
        Assert.IsType<DraftExists>((await versions.StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = before.Id })).Refusal);
        await studio.KeepAsync(sheet.Formula.Id, Line(fig, 11.10m), Line(dpg, 5), Line(ethanol, null));
        (await studio.ReleaseAsync(sheet.Formula.Id, "Margin under 75 % after the price rise")).Expect();

        var after = await studio.SheetAsync(sheet.Formula.Id);
        Assert.Equal(2, v2.Number);
        Assert.Equivalent(before.Lines, after.Versions.Single(v => v.Number == 1).Lines, strict: true);
        Assert.Equal(before.ReleasedAt, after.Versions.Single(v => v.Number == 1).ReleasedAt);
        Assert.Equal("Margin under 75 % after the price rise", after.Released!.Why);
        var changes = VersionChanges.Between(after, after.Versions[1], after.Versions[0]);
        Assert.Equal(
            [new LineChange.Amount(fig, "Fig fragrance oil", 12.00m, 11.10m), new LineChange.Amount(ethanol, "Ethanol 99.5 % vol", 83.00m, 83.90m)],
            changes.Lines!);
    }

    [Fact]
    public async Task ThrowAway_DraftAfterARelease_LeavesTheReleasedVersionAndMayStartAgain()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var before = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(ethanol, null));
        var versions = studio.Get<Versions>();
        (await versions.StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = before.Released!.Id })).Expect();
        var draft = (await studio.SheetAsync(before.Formula.Id)).Draft!;

        var thrown = (await versions.ThrowAwayDraftAsync(studio.Bo, new ThrowAwayDraft { VersionId = draft.Id, Version = draft.Version })).Expect();

        Assert.Equal(new DraftThrownAway("Fig", 2, false), thrown);
        var after = await studio.SheetAsync(before.Formula.Id);
        Assert.Null(after.Draft);
        Assert.Equivalent(before.Released!.Lines, after.Released!.Lines, strict: true);
        Assert.Equal(2, (await versions.StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = before.Released.Id })).Expect().Number);
    }

    [Fact]
    public async Task ThrowAway_TheOnlyDraft_TakesTheFormulaAndItsSizesAndFreesTheName()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        (await studio.Get<Sizes>().AddAsync(studio.Ana, new AddSize { FormulaId = started.FormulaId, Name = "100 mL", Nominal = 100 })).Expect();
        var draft = (await studio.KeepAsync(started.FormulaId, Line(fig, 12), Line(ethanol, null))).Draft!;

        Assert.True((await studio.Get<Versions>().ThrowAwayDraftAsync(studio.Ana, new ThrowAwayDraft { VersionId = draft.Id, Version = draft.Version })).Expect().FormulaGone);

        Assert.Null(await studio.Get<Formulas>().ReadAsync(started.FormulaId));
        await studio.NewFormulaAsync("Fig");
    }

    [Fact]
    public async Task ThrowAway_ReleasedOrChangedMeanwhile_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var versions = studio.Get<Versions>();
        var released = (await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(ethanol, null))).Released!;
        Assert.IsType<AlreadyReleased>((await versions.ThrowAwayDraftAsync(studio.Ana, new ThrowAwayDraft { VersionId = released.Id, Version = released.Version })).Refusal);

        var other = await studio.NewFormulaAsync("Moss");
        var opened = (await studio.SheetAsync(other.FormulaId)).Draft!;
        await studio.KeepAsync(other.FormulaId, Line(fig, 8), Line(ethanol, null));
        Assert.IsType<StaleDraft>((await versions.ThrowAwayDraftAsync(studio.Bo, new ThrowAwayDraft { VersionId = opened.Id, Version = opened.Version })).Refusal);
        Assert.Equal(2, (await studio.SheetAsync(other.FormulaId)).Draft!.Lines.Count);
    }

    [Fact]
    public async Task StartDraft_TwoAtOnce_MakesOne()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(ethanol, null));

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() =>
            studio.Get<Versions>().StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = sheet.Released!.Id }))));

        Assert.Single(outcomes, o => o is Done<DraftStarted>);
        Assert.All(outcomes.Where(o => o is not Done<DraftStarted>), o => Assert.IsType<DraftExists>(o.Refusal));
    }

    [Fact]
    public async Task Release_Unready_SaysWhatStandsInTheWayAndKeepsTheDraft()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var empty = await studio.NewFormulaAsync("Empty");
        Assert.IsType<NotReleasable>((await studio.ReleaseAsync(empty.FormulaId)).Refusal);

        await studio.KeepAsync(empty.FormulaId, Line(fig, 12), Line(ethanol, 80));
        var sum = Assert.IsType<NotReleasable>((await studio.ReleaseAsync(empty.FormulaId)).Refusal);
        Assert.Contains("92", sum.Happened, StringComparison.Ordinal);

        await studio.KeepAsync(empty.FormulaId, Line(fig, 10, LineBasis.Drops), Line(ethanol, 20, LineBasis.Grams));
        var drops = Assert.IsType<NotReleasable>((await studio.ReleaseAsync(empty.FormulaId)).Refusal);
        Assert.Contains("drops", drops.Happened, StringComparison.Ordinal);

        await studio.KeepAsync(empty.FormulaId, Line(fig, 12), Line(dpg, 0), Line(ethanol, null));
        Assert.IsType<NotReleasable>((await studio.ReleaseAsync(empty.FormulaId)).Refusal);

        await studio.KeepAsync(empty.FormulaId, Line(fig, 12), Line(ethanol, null));
        await using (var db = studio.Db())
        {
            await db.Materials.Where(m => m.Id == fig).ExecuteUpdateAsync(m => m.SetProperty(x => x.ArchivedAt, studio.Clock.GetUtcNow()));
        }

        var away = Assert.IsType<NotReleasable>((await studio.ReleaseAsync(empty.FormulaId)).Refusal);
        Assert.Contains("Fig fragrance oil is put away", away.Happened, StringComparison.Ordinal);
        var draft = (await studio.SheetAsync(empty.FormulaId)).Draft!;
        Assert.Equal([12m, null], draft.Lines.Select(l => l.Amount));
        Assert.All(draft.Lines, l => Assert.Null(l.Fraction));
    }

    [Fact]
    public async Task Release_PreBlendOfItself_IsRefusedDirectlyAndThroughOthers()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, _) = await studio.FigMaterialsAsync();
        var accord = await studio.NewFormulaAsync("Hearth accord", "pre-blend");
        var hearth = (await studio.SheetAsync(accord.FormulaId)).Formula.MakesMaterialId!.Value;
        await studio.KeepAsync(accord.FormulaId, Line(fig, 50), Line(hearth, null));
        var itself = Assert.IsType<ConsumesItself>((await studio.ReleaseAsync(accord.FormulaId)).Refusal);
        Assert.Equal(["Hearth accord"], itself.Way);

        await studio.KeepAsync(accord.FormulaId, Line(fig, 100));
        (await studio.ReleaseAsync(accord.FormulaId)).Expect();
        var smoke = await studio.ReleasedAsync("Smoke base", "pre-blend", Line(hearth, 40), Line(fig, null));
        var first = (await studio.SheetAsync(accord.FormulaId)).Released!;
        (await studio.Get<Versions>().StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = first.Id })).Expect();
        await studio.KeepAsync(accord.FormulaId, Line(fig, 90), Line(smoke.Formula.MakesMaterialId!.Value, null));

        var ring = Assert.IsType<ConsumesItself>((await studio.ReleaseAsync(accord.FormulaId)).Refusal);

        Assert.Equal(["Smoke base", "Hearth accord"], ring.Way);
        Assert.Equal(FormulaState.Draft, (await studio.SheetAsync(accord.FormulaId)).Versions[0].State);
    }

    [Fact]
    public async Task Measure_OnAReleasedVersion_IsTakenAndFillsByIt()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(dpg, 5), Line(ethanol, null));
        (await studio.Get<Sizes>().AddAsync(studio.Ana, new AddSize { FormulaId = sheet.Formula.Id, Name = "100 mL bottle", Nominal = 100, OverfillGrams = 0.5m })).Expect();
        var v1 = sheet.Released!;
        var versions = studio.Get<Versions>();

        (await versions.MeasureAsync(studio.Bo, new MeasureVersion { VersionId = v1.Id, Version = v1.Version, GramsPerMillilitre = 0.815m })).Expect();

        var after = await studio.SheetAsync(sheet.Formula.Id);
        var worked = Worked.Of(after, after.Released!);
        Assert.Equal(0.815m, worked.Measured!.Value.GramsPerMillilitre);
        Assert.Equal(Mass.FromGrams(82.0m), worked.Fill(after.Sizes.Single()));
        // No strength is known of this ethanol, so volumes are added: 1 / (0.12/0.98 + 0.05/1.02 + 0.83/0.79) = 0.8183.
        Assert.Equal(0.8183m, decimal.Round(worked.Estimate!.Value.GramsPerMillilitre, 4));
        Assert.IsType<NotAcceptable>((await versions.MeasureAsync(studio.Bo, new MeasureVersion { VersionId = v1.Id, Version = v1.Version, GramsPerMillilitre = 815 })).Refusal);
        Assert.IsType<Stale>((await versions.MeasureAsync(studio.Ana, new MeasureVersion { VersionId = v1.Id, Version = v1.Version, GramsPerMillilitre = 0.9m })).Refusal);
    }

    [Fact]
    public async Task Load_OfACandleAndOfAPreBlendInIt_IsSaidAsItsKindSaysIt()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, _) = await studio.FigMaterialsAsync();
        var soy = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var accord = await studio.ReleasedAsync("Hearth accord", "pre-blend", Line(fig, 75), Line(dpg, null));
        var candle = await studio.ReleasedAsync("Hearth Fig", "container-candle",
            Line(soy, 100, LineBasis.PercentOfWax), Line(accord.Formula.MakesMaterialId!.Value, 8, LineBasis.PercentOfWax));

        var load = Worked.Of(candle, candle.Released!).Load!;

        // a/(1 + a): 8 % of wax is 7.41 % of the total; three quarters of the pre-blend are scent.
        Assert.Equal([92.59m, 7.41m], Worked.Of(candle, candle.Released!).Shares.Select(s => s.PercentShown));
        Assert.Equal(("of wax", 6.00m), (load.Of, decimal.Round(load.Fraction!.Value * 100m, 2)));
        Assert.True(load.IsUsual);
    }
}
