using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory;

public class SafetyTests
{
    [Fact]
    public async Task SetSafety_EveryField_ComesBackAsTyped()
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var typed = Sheet(id);

        (await studio.Get<Materials>().SetSafetyAsync(studio.Bo, typed)).Expect();
        var read = (await studio.Get<Materials>().SafetyAsync(id))!;

        Assert.True(read.IsStated);
        Assert.Equal(Json(typed), Json(read));
        Assert.Equal("Wrote down the safety sheet of Fig fragrance oil", (await studio.Get<Materials>().ViewAsync(id))!.Acts[0].What);
    }

    [Fact]
    public async Task SetSafety_Again_ReplacesTheRowsAndTellsWhatChanged()
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var materials = studio.Get<Materials>();
        (await materials.SetSafetyAsync(studio.Bo, Sheet(id))).Expect();

        var form = (await materials.SafetyAsync(id))!.Copy();
        form.RequestId = Guid.CreateVersion7();
        form.Composition.RemoveAt(0);
        form.CertificateLimits[0].MaxPercent = 11;
        (await materials.SetSafetyAsync(studio.Ana, form)).Expect();

        var read = (await materials.SafetyAsync(id))!;
        Assert.Equal(["Unnamed musk"], read.Composition.Select(c => c.Name));
        Assert.Equal(11m, read.CertificateLimits[0].MaxPercent);
        Assert.Equal("Changed the safety sheet of Fig fragrance oil: composition, certificate", (await materials.ViewAsync(id))!.Acts[0].What);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task SetSafety_SomebodySavedBefore_ShowsTheirsAndChangesNothing(bool alreadyStated)
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var materials = studio.Get<Materials>();
        if (alreadyStated)
        {
            (await materials.SetSafetyAsync(studio.Bo, Sheet(id))).Expect();
        }

        var mine = (await materials.SafetyAsync(id))!.Copy();
        var theirs = mine.Copy();
        // Only a row below changes: that alone must make the other form stale.
        theirs.CertificateAmendment = "51";
        theirs.CertificateLimits = [new CategoryLine { Category = "10A", MaxPercent = 5 }];
        theirs.RequestId = Guid.CreateVersion7();
        (await materials.SetSafetyAsync(studio.Ana, theirs)).Expect();
        mine.RequestId = Guid.CreateVersion7();
        mine.HoldsCitrus = true;

        var stale = Assert.IsType<SafetyStale>((await materials.SetSafetyAsync(studio.Bo, mine)).Refusal);

        Assert.Equal("Ana", stale.ChangedBy);
        Assert.Equal([5m], stale.Theirs.CertificateLimits.Select(c => c.MaxPercent!.Value));
        Assert.Equal(alreadyStated, stale.Theirs.HoldsCitrus);
        Assert.Contains(SafetyFields.Compare(mine, stale.Theirs, mine), d => d.Field.Label == "Certificate");
    }

    public static TheoryData<string, string, Action<SetSafety>> Refused => new()
    {
        { "Hazards.Classes", "“Very bad 7”", s => s.Hazards.Classes = "Flam. Liq. 2 H225; Very bad 7" },
        { "Hazards.Limits", "“Skin Sens.”", s => s.Hazards.Limits = "Skin Sens." },
        { "Hazards.OralMgPerKg", "above 0", s => s.Hazards.OralMgPerKg = 0 },
        { "Hazards.AcuteM", "1, 10, 100", s => s.Hazards.AcuteM = 7 },
        { "VolatilePercent", "0 to 100", s => s.VolatilePercent = 101 },
        { "VanillinPercent", "0 to 100", s => s.VanillinPercent = -1 },
        { "Composition[0].Name", "Type its name", s => s.Composition[0].Name = " " },
        { "Composition[0].Cas", "should end in 6", s => s.Composition[0].Cas = "78-70-5" },
        { "Composition[0].HighPercent", "runs backwards", s => s.Composition[0].HighPercent = 1 },
        { "Composition[0].LowPercent", "From how many", s => s.Composition[0].LowPercent = null },
        { "Composition[0].StatedPercent", "outside the range", s => s.Composition[0].StatedPercent = 40 },
        { "Composition[1].Hazards.Classes", "“odd”", s => s.Composition[1].Hazards.Classes = "odd" },
        { "Composition[1].Cas", "stands here twice", s => s.Composition[1].Cas = "78-70-6" },
        { "Composition", "add up to 105 %", s => (s.Composition[1].LowPercent, s.Composition[1].HighPercent) = (95, 96) },
        { "CertificateLimits[0].Category", "no such category", s => s.CertificateLimits[0].Category = "14" },
        { "CertificateLimits[1].Category", "stands here twice", s => s.CertificateLimits[1].Category = "Category 10A" },
        { "CertificateLimits[0].MaxPercent", "0 to 100", s => s.CertificateLimits[0].MaxPercent = 120 },
        { "CertificateAmendment", "Which amendment", s => s.CertificateAmendment = null },
        { "SheetDate", "ahead of today", s => s.SheetDate = new DateOnly(2027, 1, 1) },
        { "CertificateIssuedOn", "before 1990", s => s.CertificateIssuedOn = new DateOnly(1926, 1, 1) },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public async Task SetSafety_WhatCannotBe_IsRefusedAtItsField(string field, string says, Action<SetSafety> spoil)
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var typed = Sheet(id);
        spoil(typed);

        var why = Assert.IsType<NotAcceptable>((await studio.Get<Materials>().SetSafetyAsync(studio.Bo, typed)).Refusal);

        var problem = Assert.Single(why.Problems);
        Assert.Equal(field, problem.Field);
        Assert.Contains(says, problem.Problem, StringComparison.Ordinal);
        Assert.False((await studio.Get<Materials>().SafetyAsync(id))!.IsStated);
    }

    [Fact]
    public void SafetyDefault_KnownCas_OffersTheTablesRow()
    {
        var ethanol = SafetyDefault.For("64-17-5")!;
        Assert.Equal(("ethanol", "Flam. Liq. 2 H225; Eye Irrit. 2 H319", "Eye Irrit. 2 50"), (ethanol.Name, ethanol.Hazards.Classes, ethanol.Hazards.Limits));
        Assert.Empty(new HazardLinesValidator().Validate(ethanol.Hazards).Errors);
        Assert.Null(SafetyDefault.For("99-99-9"));
        Assert.Null(SafetyDefault.For(null));
    }

    [Fact]
    public async Task AssessedMaterials_WithSafety_CarryEveryFactAndMissingPapers()
    {
        await using var studio = await TestStudio.NewAsync();
        var added = (await studio.Get<Materials>().AddAsync(studio.Ana, new AddMaterial
        {
            Name = "Fig fragrance oil", Kind = MaterialKind.FragranceOil, Density = 0.98m, DensityAtCelsius = 20, FlashPointCelsius = 78,
            RequiredPapers = [PaperKind.Sds, PaperKind.FragranceCertificate, PaperKind.CertificateOfAnalysis],
        })).Expect();
        (await studio.Get<Materials>().SetSafetyAsync(studio.Bo, Sheet(added.Id))).Expect();
        (await studio.Get<Papers>().AddAsync(studio.Bo, new AddPaper { MaterialId = added.Id, Kind = PaperKind.Sds, FileName = "a.txt", Content = "sheet"u8.ToArray() })).Expect();
        await using var db = studio.Db();

        var facts = await AssessedMaterials.OfAsync(db, [added.Id], default);
        var found = facts.Materials[added.Id];

        Assert.Equal((0.98m, 78m), (found.Density!.Value.GramsPerMillilitre, found.FlashPoint!.Value.Degrees));
        Assert.Equal(new StatedHazards("Skin Sens. 1 H317; Aquatic Chronic 2 H411", "Skin Sens. 1A 0.01", 2000, 5000, 21, 6, 1, 10), found.Hazards);
        Assert.Equal(new StatedSubstance("linalool", "78-70-6", 8, 12, 10, new("Skin Sens. 1B H317", null, OralMgPerKg: 2790)), found.Composition[0]);
        Assert.Equal(new StatedSubstance("Unnamed musk", null, 0, 1), found.Composition[1]);
        Assert.Equal(("51", new DateOnly(2026, 3, 2)), (found.Certificate!.Amendment, found.Certificate.IssuedOn));
        Assert.Equal(9.6m, found.Certificate.MaxPercent["10A"]);
        Assert.Equal((12.5m, 0.4m, true, true, false), (found.VolatilePercent, found.VanillinPercent, found.HoldsCitrus, found.PhthalateFree, found.CmrFree));
        Assert.Equal([PaperKind.FragranceCertificate], found.MissingPapers);
        Assert.Equal(Json(found), Json(JsonSerializer.Deserialize<AssessedMaterial>(Json(found))));
    }

    [Fact]
    public async Task AssessedMaterials_PreBlendMadeHere_StandsInTheFormulaAsItsIngredients()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var dpg = await studio.MaterialAsync("DPG", MaterialKind.Fixative);
        var inner = await MadeAsync(studio, "Base", (oil, 50m), (dpg, 50m));
        var outer = await MadeAsync(studio, "Accord", (inner, 40m), (dpg, 60m));
        await using var db = studio.Db();

        var facts = await AssessedMaterials.OfAsync(db, [outer, dpg], default);
        var line = Guid.CreateVersion7();
        var lines = facts.Lines(line, outer, 0.5m, Core.Blending.LineBasis.PercentByWeight).ToList();

        Assert.Equal([(oil, 0.1m), (dpg, 0.1m), (dpg, 0.3m)], lines.Select(l => (l.Material.Id, l.Fraction)));
        Assert.All(lines, l => Assert.Equal(line, l.LineId));
        Assert.Equal(0.2m, facts.Materials[outer].ScentShare);
    }

    private static async Task<Guid> MadeAsync(TestStudio studio, string name, params (Guid, decimal)[] lines)
    {
        var made = await studio.MaterialAsync(name, MaterialKind.PreBlend);
        var version = await studio.ReleasedFormulaAsync(name, "pre-blend", lines);
        await using var db = studio.Db();
        var formula = db.FormulaVersions.Where(v => v.Id == version).Select(v => v.FormulaId).Single();
        db.Formulas.Single(f => f.Id == formula).MakesMaterialId = made;
        await db.SaveChangesAsync();
        return made;
    }

    private static SetSafety Sheet(Guid id) => new()
    {
        MaterialId = id,
        Hazards = new HazardLines
        {
            Classes = "Skin Sens. 1 H317; Aquatic Chronic 2 H411", Limits = "Skin Sens. 1A 0.01",
            OralMgPerKg = 2000, DermalMgPerKg = 5000, VapourMgPerLitre = 21, MistMgPerLitre = 6, AcuteM = 1, ChronicM = 10,
        },
        SheetEdition = "rev. 4", SheetDate = new DateOnly(2026, 2, 3),
        Composition =
        [
            new() { Name = "linalool", Cas = "78-70-6", LowPercent = 8, HighPercent = 12, StatedPercent = 10, Hazards = new() { Classes = "Skin Sens. 1B H317", OralMgPerKg = 2790 } },
            new() { Name = "Unnamed musk", LowPercent = 0, HighPercent = 1 },
        ],
        VolatilePercent = 12.5m, VanillinPercent = 0.4m, HoldsCitrus = true, PhthalateFree = true, CmrFree = false,
        CertificateAmendment = "51", CertificateIssuedOn = new DateOnly(2026, 3, 2),
        CertificateLimits = [new() { Category = "10A", MaxPercent = 9.6m }, new() { Category = "12", MaxPercent = 100 }],
        Notes = "Read by Ana.",
    };

    /// <summary>Without what each save draws anew.</summary>
    private static string Json<T>(T value) => JsonSerializer.Serialize(value is SetSafety s ? (object)(s with { RequestId = Guid.Empty, Version = 0 }) : value);
}
