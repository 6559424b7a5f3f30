using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Formulation.LibraryFixture;

namespace MakerStudio.Services.Tests.Formulation;

/// <summary>Water and scent without a solubiliser: 80 water, 17 alcohol, 3 oil "will separate" (the trade's own example).</summary>
public class AdviceOverrideTests
{
    private const string Rule = "water-without-solubiliser";

    [Fact]
    public async Task Release_WithStopAdviceOpen_IsRefusedAndSaysWhatToDo()
    {
        await using var studio = await TestStudio.NewAsync();
        var sheet = await SeparatingAsync(studio);

        var refusal = Assert.IsType<AdviceOpen>((await studio.ReleaseAsync(sheet.Formula.Id)).Refusal);

        Assert.Equal(Rule, Assert.Single(refusal.Open).Rule);
        Assert.Contains("Keep it anyway", refusal.ToDo, StringComparison.Ordinal);
        Assert.Equal(FormulaState.Draft, (await studio.SheetAsync(sheet.Formula.Id)).Versions[0].State);
    }

    [Fact]
    public async Task Override_WithAReason_LetsItBeReleasedAndStaysInTheFrozenVersion()
    {
        await using var studio = await TestStudio.NewAsync();
        var sheet = await SeparatingAsync(studio);
        await OverrideAsync(studio, sheet);

        (await studio.ReleaseAsync(sheet.Formula.Id)).Expect();

        var frozen = Assert.Single((await studio.SheetAsync(sheet.Formula.Id)).Released!.Overrides);
        Assert.Equal((Rule, "Shaken before each spray", "Bo"), (frozen.Rule, frozen.Reason, frozen.By));
        var taken = await studio.Get<Versions>().TakeBackAsync(studio.Ana, new TakeBackOverride { OverrideId = frozen.Id });
        Assert.Contains("stays in the record", Assert.IsType<Because>(taken.Refusal).Happened, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Override_InTheNextDraft_HoldsWhileTheLinesStayAndLapsesWhenItGetsWorse()
    {
        await using var studio = await TestStudio.NewAsync();
        var sheet = await SeparatingAsync(studio);
        await OverrideAsync(studio, sheet);
        (await studio.ReleaseAsync(sheet.Formula.Id)).Expect();
        var released = (await studio.SheetAsync(sheet.Formula.Id)).Released!;

        (await studio.Get<Versions>().StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = released.Id })).Expect();

        var next = await studio.SheetAsync(sheet.Formula.Id);
        var carried = Assert.Single(next.Draft!.Overrides);
        Assert.Equal((released.Overrides[0].At, "Bo"), (carried.At, carried.By));
        Assert.NotNull(next.Draft.Answer(Stop(next)!));

        var lines = next.Draft.Lines;
        var wetter = await studio.KeepAsync(
            sheet.Formula.Id, [.. lines.Select(l => Line(l.MaterialId, l.Amount == 80m ? 85m : l.Amount == 17m ? 12m : l.Amount) with { LineId = l.LineId })]);
        Assert.Null(wetter.Draft!.Answer(Stop(wetter)!));
        Assert.IsType<AdviceOpen>((await studio.ReleaseAsync(sheet.Formula.Id)).Refusal);
    }

    [Fact]
    public async Task TakeBack_OnADraft_LetsTheAdviceSpeakAgainAndKeepsTheRow()
    {
        await using var studio = await TestStudio.NewAsync();
        var sheet = await SeparatingAsync(studio);
        var made = await OverrideAsync(studio, sheet);

        (await studio.Get<Versions>().TakeBackAsync(studio.Ana, new TakeBackOverride { OverrideId = made })).Expect();

        Assert.Empty((await studio.SheetAsync(sheet.Formula.Id)).Draft!.Overrides);
        Assert.IsType<AdviceOpen>((await studio.ReleaseAsync(sheet.Formula.Id)).Refusal);
        await using var db = studio.Db();
        Assert.NotNull((await db.AdviceOverrides.SingleAsync()).TakenBackAt);
        Assert.IsType<NotFound>((await studio.Get<Versions>().TakeBackAsync(studio.Ana, new TakeBackOverride { OverrideId = made })).Refusal);
    }

    [Fact]
    public async Task Override_WithoutAReasonOrWithAnUnknownRule_IsNotTaken()
    {
        await using var studio = await TestStudio.NewAsync();
        var sheet = await SeparatingAsync(studio);
        var versions = studio.Get<Versions>();

        var bare = await versions.OverrideAsync(studio.Bo, new OverrideAdvice { VersionId = sheet.Draft!.Id, Rule = Rule, Kind = AdviceKind.Stop, Reason = " " });
        var unknown = await versions.OverrideAsync(studio.Bo, new OverrideAdvice { VersionId = sheet.Draft.Id, Rule = "no-such-rule", Reason = "Why not" });

        Assert.Contains("needs a reason", bare.Refusal!.Happened, StringComparison.Ordinal);
        Assert.Contains("No rule", unknown.Refusal!.Happened, StringComparison.Ordinal);
        Assert.Empty((await studio.SheetAsync(sheet.Formula.Id)).Draft!.Overrides);
    }

    [Fact]
    public async Task EnoughScent_FromOwnTrials_ReachesTheAssessment()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var sheet = await studio.KeepAsync(started.FormulaId, Line(fig, 14), Line(ethanol, null));
        var formulas = studio.Get<Formulas>();

        (await formulas.SetEnoughScentAsync(studio.Ana, new SetEnoughScent { FormulaId = sheet.Formula.Id, Percent = 12, Note = "T-4 and T-5, 31 m³", Version = sheet.Formula.Version })).Expect();

        var after = await studio.SheetAsync(sheet.Formula.Id);
        Assert.Equal((12m, "T-4 and T-5, 31 m³"), (after.Formula.EnoughScentPercent, after.Formula.EnoughScentNote));
        Assert.Equal(0.12m, Assessed.Of(after, after.Draft!)!.EnoughScent);
        Assert.IsType<Stale>((await formulas.SetEnoughScentAsync(studio.Bo, new SetEnoughScent { FormulaId = sheet.Formula.Id, Percent = 9, Version = sheet.Formula.Version })).Refusal);
    }

    [Fact]
    public async Task Measure_AllOfIt_ReachesTheAssessmentAndNothingImpossibleIsTaken()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var draft = (await studio.KeepAsync(started.FormulaId, Line(fig, 12), Line(ethanol, null))).Draft!;
        var versions = studio.Get<Versions>();
        var asked = new MeasureVersion
        {
            VersionId = draft.Id, Version = draft.Version, GramsPerMillilitre = 0.815m, FlashPoint = 17.5m, BoilingPoint = 78m, SustainsCombustion = true, Viscosity = 1.4m, Ph = 6.5m,
        };

        (await versions.MeasureAsync(studio.Ana, asked)).Expect();

        var sheet = await studio.SheetAsync(started.FormulaId);
        var facts = Assessed.Of(sheet, sheet.Draft!)!.Measured;
        Assert.Equal((17.5m, 78m, true, 1.4m, 6.5m), (facts.FlashPoint!.Value.Degrees, facts.BoilingPoint!.Value.Degrees, facts.SustainsCombustion, facts.ViscosityMm2PerSecond, facts.Ph));
        Assert.IsType<Core.FlashPoints.FlashPointResult.Measured>(Assessment.Of(Assessed.Of(sheet, sheet.Draft!)!, sheet.Choices)!.Flash);
        var slips = asked with { RequestId = Guid.CreateVersion7(), Version = sheet.Draft!.Version, FlashPoint = 900, Ph = 15, Viscosity = 0 };
        Assert.Equal(3, Assert.IsType<NotAcceptable>((await versions.MeasureAsync(studio.Ana, slips)).Refusal).Problems.Count);
    }

    private static AdviceGiven? Stop(FormulaSheet sheet) =>
        AdviceRules.Judge(AdviceBasis.Of(Assessed.Of(sheet, sheet.Draft!)!, isBeingReleased: true)).FirstOrDefault(a => a.Rule == Rule);

    private static async Task<FormulaSheet> SeparatingAsync(TestStudio studio)
    {
        var water = await studio.MaterialAsync("Water", MaterialKind.Water, density: 0.998m);
        var alcohol = await studio.MaterialAsync("Ethanol", MaterialKind.Solvent, density: 0.79m);
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var started = await studio.NewFormulaAsync("Fig mist", "room-spray-water");
        return await studio.KeepAsync(started.FormulaId, Line(water, 80), Line(alcohol, 17), Line(oil, 3));
    }

    private static async Task<Guid> OverrideAsync(TestStudio studio, FormulaSheet sheet)
    {
        var given = Stop(sheet)!;
        Assert.Equal(AdviceKind.Stop, given.Kind);
        return (await studio.Get<Versions>().OverrideAsync(studio.Bo, new OverrideAdvice
        {
            VersionId = sheet.Draft!.Id, Rule = given.Rule, Subject = given.Subject, Kind = given.Kind, Measure = given.Measure, Title = given.Title,
            Reason = "Shaken before each spray",
        })).Expect().OverrideId;
    }
}
