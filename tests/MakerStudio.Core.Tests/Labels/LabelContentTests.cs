using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Labels;

namespace MakerStudio.Core.Tests.Labels;

public class LabelContentTests
{
    [Fact]
    public void Content_NothingMissing_OfTheWholeSpray() => Assert.Empty(LabelContent.Of(LabelExamples.Spray).Missing);

    [Fact]
    public void Content_BareFacts_NameWhatIsMissing() =>
        Assert.Equal(["batch", "maker"], LabelContent.Of(LabelExamples.Bare).Missing.Select(element => element.Key));

    [Fact]
    public void Ufi_ClassedAndSoldInTheUnion_IsMissingWithoutACode()
    {
        Assert.Equal(ElementState.Missing, StateOf(LabelExamples.Spray with { Ufi = null }, "ufi"));
        Assert.Equal(ElementState.NotNeeded, StateOf(LabelExamples.UsSpray, "ufi"));
        Assert.Equal(
            ElementState.NotNeeded,
            StateOf(LabelExamples.Spray with { Ufi = null, Scheme = LabelScheme.GreatBritain, Hazards = LabelExamples.Spray.Hazards with { NeedsUfi = false } }, "ufi"));
    }

    [Fact]
    public void Precautions_DisposalNotSaid_AreMissingAndNamesTheStatement()
    {
        LabelElement element = LabelContent.Of(LabelExamples.Spray with { Wording = LabelWording.Usual with { Disposal = "" } })["precautions"];
        Assert.Equal(ElementState.Missing, element.State);
        Assert.Contains("P501", element.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Precautions_Disposal_IsCompletedInTheMakersWords() => Assert.EndsWith(
        "P501 Dispose of contents/container to the shop that sold it.",
        LabelContent.Of(LabelExamples.Spray with { Wording = LabelWording.Usual with { Disposal = "the shop that sold it." } })["precautions"].Says,
        StringComparison.Ordinal);

    /// <summary>CLP Annex I, 1.5.2.1.1: Flam. Liq. 2 and Eye Irrit. 2 up to 125 mL; EUH208 never drops.</summary>
    [Fact]
    public void SmallPack_Relief_LeavesOutWhatItMayAndNoMore()
    {
        LabelContent content = LabelContent.Of(LabelExamples.SmallSpray);
        Assert.Equal(ElementState.NotNeeded, content["hazard-statements"].State);
        Assert.Contains("H225, H319 left out", content["hazard-statements"].Note, StringComparison.Ordinal);
        Assert.Equal(ElementState.There, content["supplemental"].State);
        Assert.Equal(ElementState.There, content["signal-word"].State);
        Assert.Equal([Pictogram.Ghs02, Pictogram.Ghs07], content["pictograms"].Pictograms);
        Assert.Contains("H225", LabelContent.Of(LabelExamples.SmallSpray with { Wording = LabelWording.Usual })["hazard-statements"].Says, StringComparison.Ordinal);
    }

    /// <summary>16 CFR 500: both unit systems; the example of the reference, 118.29 mL.</summary>
    [Theory]
    [InlineData(118.29, true, "4 FL OZ (118 mL)")]
    [InlineData(226.8, false, "NET WT 8 OZ (226 g)")]
    public void NetQuantity_InTheUs_StandsInBothSystems(double amount, bool isVolume, string expected) => Assert.Equal(
        expected.Replace(' ', '\u00a0'),
        LabelContent.Of(LabelExamples.UsSpray with { Net = new((decimal)amount, isVolume) })["net-quantity"].Says);

    [Theory]
    [InlineData(100, true, false, "100 mL")]
    [InlineData(220, false, true, "220 g ℮")]
    [InlineData(1500, false, false, "1.5 kg")]
    public void NetQuantity_InEurope_IsMetric(double amount, bool isVolume, bool mark, string expected) => Assert.Equal(
        expected.Replace(' ', '\u00a0'),
        LabelContent.Of(LabelExamples.Spray with { Net = new((decimal)amount, isVolume), Wording = LabelWording.Usual with { ShowsEMark = mark } })["net-quantity"].Says);

    [Fact]
    public void Candle_InTheUs_OpensItsCautionsWithTheSafetyAlert()
    {
        LabelElement us = LabelContent.Of(LabelExamples.Candle with { Scheme = LabelScheme.UnitedStates })["cautions"];
        Assert.True(us.HasSafetyAlert);
        Assert.StartsWith("WARNING Never leave it burning alone.", us.Says, StringComparison.Ordinal);
        Assert.False(LabelContent.Of(LabelExamples.Candle)["cautions"].HasSafetyAlert);
        Assert.False(LabelContent.Of(LabelExamples.UsSpray)["cautions"].HasSafetyAlert);
    }

    [Fact]
    public void Differences_OfTheSameElements_AreNone() => Assert.Empty(LabelExamples.Spray.Hazards.DifferencesFrom(LabelExamples.Spray.Hazards with { }));

    [Fact]
    public void Differences_WhatCameAndWent_IsSaidInWords()
    {
        LabelHazards before = LabelExamples.Spray.Hazards;
        LabelHazards now = before with
        {
            Signal = "Warning", Pictograms = [Pictogram.Ghs07], Statements = [.. before.Statements.Skip(1), new("H317", "May cause an allergic skin reaction.")],
            NeedsUfi = false,
        };
        Assert.Equal(
            [
                "signal word Danger → Warning", "pictogram GHS02 has gone", "H317 “May cause an allergic skin reaction.” is new",
                "H225 “Highly flammable liquid and vapour.” has gone", "no UFI is needed",
            ],
            now.DifferencesFrom(before));
    }

    private static ElementState StateOf(LabelFacts facts, string key) => LabelContent.Of(facts)[key].State;
}
