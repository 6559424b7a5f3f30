using System.Text;
using System.Text.Json.Nodes;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Exchange.FormulaFile;

namespace MakerStudio.Services.Tests.Exchange.FormulaFile;

public class FormulaDocumentTests
{
    [Fact]
    public void Read_ShippedExample_IsTheFormulaItSays()
    {
        FormulaReading reading = FormulaDocumentReader.Read(FormatFiles.Fig);
        Assert.Empty(reading.Faults);
        Assert.Equal("Fig", reading.Document!.Name);
        Assert.Equal(100m, reading.Document.PackMillilitres);
        var (formula, faults) = reading.Document.ToAssessed();
        Assert.Empty(faults);
        Assert.Equal([0.12m, 0.05m, 0.83m], formula!.Lines.Select(line => line.Fraction));
        Assert.Equal(new AlcoholStrength(96, AlcoholBasis.PercentVolume), formula.Lines[2].Material.Strength);
        Assert.True(FormatFiles.IsFormula(FormatFiles.Fig));
    }

    /// <summary>Every field of the format at least once.</summary>
    [Fact]
    public void Write_EveryField_ReadsBackTheSame()
    {
        FormulaDocument document = Full();
        byte[] written = FormulaDocumentWriter.Write(document);
        Assert.True(FormatFiles.IsFormula(written), Encoding.UTF8.GetString(written));
        FormulaReading reading = FormulaDocumentReader.Read(written);
        Assert.Empty(reading.Faults);
        Assert.Equal(written, FormulaDocumentWriter.Write(reading.Document!));
        Assert.Equal(document.Lines, reading.Document!.Lines);
        Assert.Equal(document.Measured, reading.Document.Measured);
        Assert.Equal(document.Materials[0].Facts.Hazards, reading.Document.Materials[0].Facts.Hazards);
        Assert.Equal(document.Materials[0].Facts.Composition, reading.Document.Materials[0].Facts.Composition);
        Assert.Equal(document.Materials[0].Facts.ScentShare, reading.Document.Materials[0].Facts.ScentShare);
    }

    [Theory]
    [InlineData("g", null, LineBasis.Grams)]
    [InlineData("mL", null, LineBasis.Millilitres)]
    [InlineData("[drp]", null, LineBasis.Drops)]
    [InlineData("{parts}", "mass", LineBasis.PartsByWeight)]
    [InlineData("{parts}", "volume", LineBasis.PartsByVolume)]
    [InlineData("%", "mass", LineBasis.PercentByWeight)]
    [InlineData("%", "volume", LineBasis.PercentByVolume)]
    [InlineData("%", "wax", LineBasis.PercentOfWax)]
    public void Read_UnitAndBasis_AreTheBasisOfTheLine(string unit, string? basis, LineBasis expected)
    {
        JsonNode file = FormatFiles.FigNode();
        var amount = new JsonObject { ["value"] = 5, ["unit"] = unit };
        if (basis is not null)
        {
            amount["basis"] = basis;
        }

        file["formula"]!["lines"]![0]!["amount"] = amount;
        FormulaReading reading = FormulaDocumentReader.Read(FormatFiles.Bytes(file));
        Assert.Empty(reading.Faults);
        Assert.Equal(expected, reading.Document!.Lines[0].Basis);
        Assert.True(FormatFiles.IsFormula(FormatFiles.Bytes(file)));
    }

    [Fact]
    public void Read_OtherUnits_AreConverted()
    {
        JsonNode file = FormatFiles.FigNode();
        file["materials"]![0]!["density"] = new JsonObject { ["value"] = 980, ["unit"] = "kg/m3" };
        file["formula"]!["pack"] = new JsonObject { ["value"] = 0.1, ["unit"] = "L" };
        FormulaDocument document = FormulaDocumentReader.Read(FormatFiles.Bytes(file)).Document!;
        Assert.Equal(new Density(0.98m), document.Materials[0].Facts.Density);
        Assert.Equal(100m, document.PackMillilitres);
    }

    [Fact]
    public void Read_ByteOrderMark_IsTaken() => Assert.Empty(FormulaDocumentReader.Read(new byte[] { 0xEF, 0xBB, 0xBF }.Concat(FormatFiles.Fig).ToArray()).Faults);

    [Fact]
    public void ToAssessed_PercentagesThatDoNotAddUp_AreAFaultOfTheLines()
    {
        JsonNode file = FormatFiles.FigNode();
        file["formula"]!["lines"]![2]!["amount"] = new JsonObject { ["value"] = 80, ["unit"] = "%", ["basis"] = "mass" };
        var (formula, faults) = FormulaDocumentReader.Read(FormatFiles.Bytes(file)).Document!.ToAssessed();
        Assert.Null(formula);
        Assert.Contains(faults, fault => fault.Path == "$.formula.lines" && fault.Says.Contains("97", StringComparison.Ordinal));
    }

    [Fact]
    public void ToAssessed_DropsWithoutTheirMass_AreAFaultOfTheLine()
    {
        JsonNode file = FormatFiles.FigNode();
        foreach (JsonNode? line in file["formula"]!["lines"]!.AsArray())
        {
            line!["amount"] = new JsonObject { ["value"] = 10, ["unit"] = "[drp]" };
        }

        var (_, faults) = FormulaDocumentReader.Read(FormatFiles.Bytes(file)).Document!.ToAssessed();
        Assert.Contains(faults, fault => fault.Path == "$.formula.lines[1]");
    }

    private static FormulaDocument Full()
    {
        var hazards = new StatedHazards("Skin Sens. 1A H317; Aquatic Acute 1 H400", "Skin Sens. 1A 0.01", 1200m, 2500m, 11m, 1.5m, 10, 1);
        var material = new AssessedMaterial(
            Guid.CreateVersion7(), "Fig \"base\" №1", MaterialKind.PreBlend, CasNumber.Of("78-70-6"), new Density(0.9812m),
            new(190m, AlcoholBasis.UsProof), new Celsius(-5.5m), hazards,
            [new("linalool", "78-70-6", 5m, 10m, 7.25m, hazards), new("nobody's number", null, 0m, 1m)],
            new("51", new(2026, 1, 10), new Dictionary<string, decimal> { ["10A"] = 9.6m, ["12"] = 100m }),
            1.5m, 0.25m, true, false, true, [PaperKind.Sds, PaperKind.FragranceCertificate], 0.4m);
        return new(
            "Fig, first try",
            ProductKinds.Get("linen-spray"),
            [new("base", 12.5m, LineBasis.PercentByWeight), new("base", null, LineBasis.PercentByWeight)],
            [new("base", material, 26.5m)],
            new(new Density(0.815m), new Celsius(17m), new Celsius(78.5m), true, 1.2m, 6.5m),
            PackMillilitres: 100m,
            EnoughScentPercent: 3m,
            HasSealedSpray: true,
            Note: "Two lines\nof a note.",
            Market: new(
                LabelScheme.UnitedStates, ["us-air-freshener-liquid"], 0.001m,
                [new("citral", ["5392-40-5"], "51", new Dictionary<string, decimal> { ["10B"] = 0.6m }, true)], new(2026, 11, 25)));
    }
}
