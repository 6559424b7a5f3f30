namespace MakerStudio.Core.Materials;

/// <summary>
/// Which required papers are not there. SDS and fragrance certificate may be filed with the material or with the lot;
/// a CoA tells of one lot, so only the lot's own counts (common practice, no source).
/// </summary>
public static class PaperCheck
{
    /// <summary>What a lot lacks before it can be released, in the order of the kinds.</summary>
    public static IReadOnlyList<PaperKind> MissingForLot(
        IEnumerable<PaperKind> required, IEnumerable<PaperKind> ofMaterial, IEnumerable<PaperKind> ofLot)
    {
        var there = ofMaterial.Where(kind => !IsPerLot(kind)).Concat(ofLot).ToHashSet();
        return [.. required.Distinct().Where(kind => !there.Contains(kind)).Order()];
    }

    /// <summary>What a material lacks whatever its lots have; papers of single lots are not asked for here.</summary>
    public static IReadOnlyList<PaperKind> MissingForMaterial(IEnumerable<PaperKind> required, IEnumerable<PaperKind> ofMaterial) =>
        MissingForLot(required.Where(kind => !IsPerLot(kind)), ofMaterial, []);

    /// <summary>Whether each lot needs a paper of its own.</summary>
    public static bool IsPerLot(PaperKind kind) => kind == PaperKind.CertificateOfAnalysis;
}
