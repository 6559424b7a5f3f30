using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;

namespace MakerStudio.Core.Tests.Hazards;

public class HazardLabelTests
{
    private static readonly LabelSituation Retail = new();

    [Fact]
    public void Pictograms_RespiratorySensitiser_HidesTheExclamationMarkOfSkinAndEyeOnly()
    {
        Assert.Equal([Pictogram.Ghs08], Label("Resp. Sens. 1 H334; Skin Sens. 1 H317; Eye Irrit. 2 H319").Pictograms);
        Assert.Equal([Pictogram.Ghs07, Pictogram.Ghs08], Label("Resp. Sens. 1 H334; Skin Sens. 1 H317; STOT SE 3 H336").Pictograms);
    }

    [Fact]
    public void Statements_ChronicTwo_DoesNotCoverAcute() =>
        Assert.Equal(["H400", "H411"], Label("Aquatic Acute 1 H400; Aquatic Chronic 2 H411").HazardStatements.Select(each => each.Code));

    [Fact]
    public void Statements_LettersReachTheText() => Assert.Equal(
        "May damage fertility. Suspected of damaging the unborn child.",
        Assert.Single(Label("Repr. 1B H360Fd").HazardStatements).Text);

    [Fact]
    public void Precautions_ForEveryPairOfClasses_AreAtMostSixAndDisposalStays()
    {
        foreach (HazardCategory one in Enum.GetValues<HazardCategory>())
        {
            foreach (HazardCategory other in Enum.GetValues<HazardCategory>())
            {
                PrecautionsChosen chosen = PrecautionChoice.Of([one, other], forGeneralPublic: true);
                Assert.InRange(chosen.Chosen.Count, 2, PrecautionChoice.AtMost);
                Assert.Contains(chosen.Chosen, each => each.Code == "P501");
                Assert.DoesNotContain(chosen.Chosen, each => each.Code is "P272" or "P321");
                Assert.Empty(chosen.Chosen.Select(each => each.Code).Intersect(chosen.LeftOut.Select(each => each.Code)));
            }
        }
    }

    [Fact]
    public void NoClass_NoElements()
    {
        HazardLabel label = HazardLabel.For([], Retail);
        Assert.Equal(SignalWord.None, label.Signal);
        Assert.Empty(label.Precautions.Chosen);
        Assert.False(label.NeedsUfi);
    }

    [Fact]
    public void SmallPack_TradeOnly_RelievesMoreThanRetail()
    {
        HazardEntry[] entries = [.. ClassificationText.Parse("STOT SE 3 H336; Aquatic Chronic 3 H412").Entries];
        Assert.Empty(HazardLabel.For(entries, new(125m)).SmallPack.HazardStatements);
        Assert.Equal(["H336"], HazardLabel.For(entries, new(125m, ForGeneralPublic: false)).SmallPack.HazardStatements);
        Assert.Contains("P273", HazardLabel.For([entries[1]], new(125m)).SmallPack.Precautions);
    }

    [Fact]
    public void Closure_Methanol_AsksForItByShareAlone()
    {
        Ingredient methanol = new("methanol", "67-56-1", 3m, HazardFacts.NotClassified, []);
        Assert.True(HazardLabel.For([], Retail, ingredients: [methanol]).ChildResistant.IsNeeded);
        Assert.False(HazardLabel.For([], Retail, ingredients: [methanol with { Percent = 2.9m }]).ChildResistant.IsNeeded);
        Assert.False(HazardLabel.For([], Retail, ingredients: [methanol]).Tactile.IsNeeded);
    }

    [Fact]
    public void Market_GreatBritain_HasNoUfi() =>
        Assert.False(HazardLabel.For([.. ClassificationText.Parse("Flam. Liq. 2 H225").Entries], new(Market: LabelMarket.GreatBritain)).NeedsUfi);

    [Fact]
    public void Public_CategoryOneOfReproduction_IsNotForSale() =>
        Assert.Contains(Label("Repr. 1B H360").Notices, notice => notice.Contains("general public", StringComparison.Ordinal));

    /// <summary>CLP Annex I, Table 1.3; 52 × 74 ÷ 15 = 256.5 mm² is a square of 16.02 mm.</summary>
    [Theory]
    [InlineData(100, 52, 10, 16)]
    [InlineData(500, 52, 10, 16)]
    [InlineData(3000, 52, 10, 16)]
    [InlineData(3001, 74, 23, null)]
    [InlineData(50001, 105, 32, null)]
    [InlineData(500001, 148, 46, null)]
    public void Size_ByCapacity(int millilitres, int width, int side, int? better)
    {
        LabelSize size = LabelSizes.For(millilitres);
        Assert.Equal((width, side, better), ((int)size.WidthMillimetres, (int)size.PictogramSideMillimetres, (int?)size.PictogramSideIfPossible));
        Assert.Equal(16.02, LabelSizes.PictogramSide(52 * 74), 0.005);
        Assert.Equal(10, LabelSizes.PictogramSide(30 * 40));
    }

    private static HazardLabel Label(string classes) => HazardLabel.For([.. ClassificationText.Parse(classes).Entries], Retail);
}
