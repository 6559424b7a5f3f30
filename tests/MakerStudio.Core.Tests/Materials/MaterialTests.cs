using System.Text.RegularExpressions;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Materials;

public class MaterialTests
{
    [Fact]
    public void All_EveryKind_HasFactsOnce()
    {
        Assert.Equal(Enum.GetValues<MaterialKind>().Order(), MaterialKinds.All.Select(facts => facts.Kind).Order());
        Assert.Equal(MaterialKinds.All.Count, MaterialKinds.All.Select(facts => facts.Name).Distinct().Count());
    }

    [Fact]
    public void LotPrefix_IsOneSayableLetterAndOnlySolventsShareOne()
    {
        Assert.All(MaterialKinds.All, facts => Assert.Matches(new Regex("^[A-HJ-NP-Z]$"), facts.LotPrefix));
        IGrouping<string, MaterialKindFacts> shared = Assert.Single(
            MaterialKinds.All.GroupBy(facts => facts.LotPrefix), group => group.Count() > 1);
        Assert.Equal([MaterialKind.Solvent, MaterialKind.CarrierBase], shared.Select(facts => facts.Kind));
    }

    [Fact]
    public void Packaging_IsCountedAndNeedsNoPapers() => Assert.All(MaterialKinds.All, facts =>
    {
        Assert.Equal(facts.IsPackaging, facts.DefaultStockUnit == StockUnit.Each);
        Assert.False(facts.IsPackaging && facts.DefaultPapers.Count > 0);
    });

    [Theory]
    [InlineData(MaterialKind.FragranceOil)]
    [InlineData(MaterialKind.EssentialOil)]
    public void Scents_NeedSheetCertificateAndAnalysis(MaterialKind kind) => Assert.Equal(
        [PaperKind.Sds, PaperKind.FragranceCertificate, PaperKind.CertificateOfAnalysis], MaterialKinds.DefaultPapers(kind));

    /// <summary>27 CFR 30.11: proof is twice the per cent by volume.</summary>
    [Theory]
    [InlineData("199", AlcoholBasis.UsProof, "99.5")]
    [InlineData("90", AlcoholBasis.UsProof, "45")]
    [InlineData("90", AlcoholBasis.PercentVolume, "90")]
    public void PercentVolume_KnowsProofFromPercent(string value, AlcoholBasis basis, string percent) =>
        Assert.Equal(Numbers.Of(percent), new AlcoholStrength(Numbers.Of(value), basis).PercentVolume);

    [Fact]
    public void PercentVolume_OfAStrengthByMass_IsUnknownWithoutATable() =>
        Assert.Null(new AlcoholStrength(92.4m, AlcoholBasis.PercentMass).PercentVolume);

    [Theory]
    [InlineData("100.1", AlcoholBasis.PercentVolume)]
    [InlineData("101", AlcoholBasis.PercentMass)]
    [InlineData("200.5", AlcoholBasis.UsProof)]
    [InlineData("-1", AlcoholBasis.UsProof)]
    public void Strength_OutsideItsBasis_IsRefused(string value, AlcoholBasis basis) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new AlcoholStrength(Numbers.Of(value), basis));
}
