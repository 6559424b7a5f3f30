using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Materials;

/// <summary>The defaults a kind of material brings.</summary>
/// <param name="LotPrefix">One letter before the lot number; never O or I, which read as digits.</param>
/// <param name="DefaultPapers">Asked for at receipt unless the material says otherwise.</param>
public sealed record MaterialKindFacts(
    MaterialKind Kind,
    string Name,
    string LotPrefix,
    StockUnit DefaultStockUnit,
    bool IsPackaging,
    IReadOnlyList<PaperKind> DefaultPapers);

/// <summary>Every kind of material with its defaults. Letters and papers are common practice, no source.</summary>
public static class MaterialKinds
{
    private static readonly PaperKind[] NoPapers = [];
    private static readonly PaperKind[] SafetySheet = [PaperKind.Sds];
    private static readonly PaperKind[] SafetySheetAndAnalysis = [PaperKind.Sds, PaperKind.CertificateOfAnalysis];
    private static readonly PaperKind[] ScentPapers =
        [PaperKind.Sds, PaperKind.FragranceCertificate, PaperKind.CertificateOfAnalysis];

    public static IReadOnlyList<MaterialKindFacts> All { get; } =
    [
        Weighed(MaterialKind.FragranceOil, "Fragrance oil", "P", ScentPapers),
        Weighed(MaterialKind.EssentialOil, "Essential oil", "N", ScentPapers),
        Weighed(MaterialKind.Solvent, "Solvent", "E", SafetySheet),
        Weighed(MaterialKind.CarrierBase, "Carrier base", "E", SafetySheet),
        Weighed(MaterialKind.Fixative, "Fixative", "D", SafetySheet),
        Weighed(MaterialKind.Solubiliser, "Solubiliser", "U", SafetySheet),
        Weighed(MaterialKind.Preservative, "Preservative", "V", SafetySheetAndAnalysis),
        Weighed(MaterialKind.Water, "Water", "H", NoPapers),
        Weighed(MaterialKind.Wax, "Wax", "W", SafetySheet),
        Weighed(MaterialKind.Colourant, "Colourant", "C", SafetySheet),
        Weighed(MaterialKind.DryBotanical, "Dry botanical", "Y", NoPapers),
        Weighed(MaterialKind.PreBlend, "Pre-blend", "A", NoPapers),
        Counted(MaterialKind.Bottle, "Bottle or jar", "B"),
        Counted(MaterialKind.Sprayer, "Sprayer", "S"),
        Counted(MaterialKind.Closure, "Closure", "K"),
        Counted(MaterialKind.Reed, "Reed", "R"),
        Counted(MaterialKind.Wick, "Wick", "T"),
        Counted(MaterialKind.Label, "Label", "L"),
        Counted(MaterialKind.Carton, "Carton", "X"),
        Counted(MaterialKind.OtherPackaging, "Other packaging", "G"),
    ];

    private static readonly Dictionary<MaterialKind, MaterialKindFacts> ByKind = All.ToDictionary(facts => facts.Kind);

    /// <exception cref="KeyNotFoundException">The number is no kind of material.</exception>
    public static MaterialKindFacts Get(MaterialKind kind) => ByKind[kind];

    public static string Name(MaterialKind kind) => Get(kind).Name;

    public static string LotPrefix(MaterialKind kind) => Get(kind).LotPrefix;

    public static bool IsPackaging(MaterialKind kind) => Get(kind).IsPackaging;

    public static StockUnit DefaultStockUnit(MaterialKind kind) => Get(kind).DefaultStockUnit;

    public static IReadOnlyList<PaperKind> DefaultPapers(MaterialKind kind) => Get(kind).DefaultPapers;

    private static MaterialKindFacts Weighed(MaterialKind kind, string name, string prefix, PaperKind[] papers) =>
        new(kind, name, prefix, StockUnit.Gram, false, papers);

    private static MaterialKindFacts Counted(MaterialKind kind, string name, string prefix) =>
        new(kind, name, prefix, StockUnit.Each, true, NoPapers);
}
