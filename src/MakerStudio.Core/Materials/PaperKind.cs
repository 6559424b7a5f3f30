namespace MakerStudio.Core.Materials;

/// <summary>The papers that come with a lot or a material.</summary>
public enum PaperKind
{
    /// <summary>Safety data sheet.</summary>
    Sds,

    /// <summary>The supplier's certificate of use limits by product category for a fragrance.</summary>
    FragranceCertificate,

    /// <summary>Certificate of analysis of one lot.</summary>
    CertificateOfAnalysis,
    Other,
}

public static class PaperKinds
{
    public static string Name(PaperKind kind) => kind switch
    {
        PaperKind.Sds => "SDS",
        PaperKind.FragranceCertificate => "fragrance certificate",
        PaperKind.CertificateOfAnalysis => "CoA",
        PaperKind.Other => "other paper",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
