using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Tests.Materials;

public class PaperCheckTests
{
    private static readonly PaperKind[] Scent = [PaperKind.Sds, PaperKind.FragranceCertificate, PaperKind.CertificateOfAnalysis];

    [Fact]
    public void MissingForLot_NothingFiled_IsAllThatIsRequired() =>
        Assert.Equal(Scent, PaperCheck.MissingForLot(Scent, [], []));

    [Fact]
    public void MissingForLot_AnalysisFiledWithTheMaterial_StillLacksItsOwn() =>
        Assert.Equal([PaperKind.CertificateOfAnalysis], PaperCheck.MissingForLot(Scent, Scent, []));

    [Fact]
    public void MissingForLot_SheetOfTheMaterialAndAnalysisOfTheLot_AreEnough() =>
        Assert.Empty(PaperCheck.MissingForLot(Scent, [PaperKind.Sds, PaperKind.FragranceCertificate], [PaperKind.CertificateOfAnalysis]));

    [Fact]
    public void MissingForLot_NewSheetFiledWithTheLot_Counts() =>
        Assert.Empty(PaperCheck.MissingForLot([PaperKind.Sds], [], [PaperKind.Sds]));

    [Fact]
    public void MissingForLot_RequiredTwice_IsNamedOnce() =>
        Assert.Equal([PaperKind.Sds], PaperCheck.MissingForLot([PaperKind.Sds, PaperKind.Sds], [], []));

    [Fact]
    public void MissingForMaterial_NeverAsksForAnAnalysis() =>
        Assert.Equal([PaperKind.FragranceCertificate], PaperCheck.MissingForMaterial(Scent, [PaperKind.Sds]));
}
