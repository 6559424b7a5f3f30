using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using static MakerStudio.Core.Advice.ExampleLines;
using static MakerStudio.Core.Tests.Advice.AdviceCase;

namespace MakerStudio.Core.Tests.Advice;

public class PaperAdviceTests
{
    [Fact]
    public void Papers_Missing_WarnsInATrialAndStopsARelease()
    {
        AssessedFormula formula = Spray(Line(OilMaterial with { MissingPapers = [PaperKind.Sds, PaperKind.FragranceCertificate] }, 12m), Alcohol(88m));
        Assert.Equal([AdviceKind.Warn], Kinds("missing-paper", formula));
        AdviceGiven stop = Assert.Single(Given("missing-paper", formula, isBeingReleased: true));
        Assert.Equal(AdviceKind.Stop, stop.Kind);
        Assert.Contains("SDS, fragrance certificate", stop.ToString(), StringComparison.Ordinal);
        Assert.Empty(Kinds("missing-paper", Spray(Oil(12m), Alcohol(88m)), true));
    }

    [Fact]
    public void Drops_NoteInATrialAndStopARelease()
    {
        AssessedFormula formula = Spray(Line(OilMaterial, 12m, LineBasis.Drops), Alcohol(88m));
        Assert.Equal([AdviceKind.Note], Kinds("drops", formula));
        Assert.Equal([AdviceKind.Stop], Kinds("drops", formula, isBeingReleased: true));
        Assert.Empty(Kinds("drops", Spray(Line(OilMaterial, 12m, LineBasis.Millilitres), Alcohol(88m)), true));
    }

    [Theory]
    [InlineData(true, "")]
    [InlineData(null, "Warn")]
    [InlineData(false, "Warn")]
    public void Statements_ByWhatTheSupplierSays(bool? isFree, string expected)
    {
        Assert.Equal(expected, Text(Kinds("phthalate-statement", Spray(Line(OilMaterial with { PhthalateFree = isFree }, 12m), Alcohol(88m)))));
        Assert.Equal(expected, Text(Kinds("cmr-statement", Spray(Line(OilMaterial with { CmrFree = isFree }, 12m), Alcohol(88m)))));
    }

    [Fact]
    public void Statements_NoAndSilence_AreSaidApart()
    {
        AssessedMaterial other = OilMaterial with { Id = Guid.Empty, Name = "Cedar oil", CmrFree = false };
        AdviceGiven[] given = Given("cmr-statement", Spray(Line(OilMaterial with { CmrFree = null }, 6m), Line(other, 6m), Alcohol(88m)));
        Assert.Equal(["Cedar oil", "Fig oil"], given.Select(each => each.Lines.Single().Material.Name));
        Assert.Equal(2, given.Select(each => each.Subject).Distinct().Count());
    }

    [Fact]
    public void Phthalate_OnTheSheetOrAsALine_IsFound()
    {
        AssessedMaterial thinned = OilMaterial with { Composition = [new("diethyl phthalate", "84-66-2", 5m, 10m)] };
        Assert.Contains("holds", Assert.Single(Given("phthalate-statement", Spray(Line(thinned, 12m), Alcohol(88m)))).ToString(), StringComparison.Ordinal);
        AssessedLine solvent = Line(Material("DEP", MaterialKind.Solvent, "84-66-2"), 5m);
        Assert.Equal([AdviceKind.Warn], Kinds("phthalate-statement", Spray(Oil(12m), solvent, Alcohol(83m))));
        // An essential oil is pressed or distilled, not thinned; a solvent without statement is not asked either.
        Assert.Empty(Kinds("phthalate-statement", Spray(Line(Lavender with { PhthalateFree = null }, 12m), Alcohol(88m))));
    }

    [Fact]
    public void Composition_Unknown_WarnsWithItsShare()
    {
        AssessedFormula formula = Spray(Line(OilMaterial with { Hazards = new(" ") }, 12m), Alcohol(88m));
        AdviceGiven given = Assert.Single(Given("unknown-composition", formula));
        Assert.Equal((AdviceKind.Warn, 0.12m), (given.Kind, given.Measure));
        Assert.Empty(Kinds("unknown-composition", Spray(Line(OilMaterial with { Hazards = null, Composition = [new("linalool", "78-70-6", 5m, 10m)] }, 12m), Alcohol(88m))));
        Assert.Empty(Kinds("unknown-composition", Spray(Oil(12m), Line(Material("DPG", MaterialKind.Fixative, "25265-71-8") with { Hazards = null }, 5m), Alcohol(83m))));
        Assert.Empty(Kinds("unknown-composition", Of(new Sachet(), Oil(4m), Line(Material("Petals", MaterialKind.DryBotanical) with { Hazards = null }, 96m))));
    }

    [Fact]
    public void Density_Unknown_WarnsWhereSoldByVolumeAndNotMeasured()
    {
        AssessedLine oil = Line(OilMaterial with { Density = null }, 8m);
        AssessedFormula spray = Spray(oil, Alcohol(92m));
        Assert.Equal([AdviceKind.Warn], Kinds("unknown-density", spray));
        Assert.Empty(Kinds("unknown-density", spray with { Measured = new(Density: new Density(0.815m)) }));
        Assert.Empty(Kinds("unknown-density", Of(new ContainerCandle(), oil, Wax(92m)))); // sold by weight
    }

    /// <summary>A density that cannot go with the stated alcohol stands in the way too, with no line lacking one.</summary>
    [Fact]
    public void Density_ThatBeliesTheComposition_IsSaid()
    {
        AssessedMaterial odd = Material("Tincture", MaterialKind.Solvent) with
        {
            Density = new(2m),
            Composition = [new("ethanol", "64-17-5", 60m, 60m)],
        };
        AdviceGiven given = Assert.Single(Given("unknown-density", Spray(Oil(12m), Line(odd, 88m))));
        Assert.Empty(given.Lines);
        Assert.Contains("does not go with", given.ToString(), StringComparison.Ordinal);
    }
}
