using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;

namespace MakerStudio.Core.Labels;

/// <summary>Invented products that the rules show themselves on.</summary>
public static class LabelExamples
{
    private static readonly LabelMaker Maker = new("Quince Yard Studio", "4 Quince Yard\n00000 Anytown", "000 000 0000");

    private static readonly LabelBatch Batch = new("RS-1", new DateOnly(2027, 10, 31), "https://studio.example/finished/RS-1");

    /// <summary>Fig, an alcohol spray of 100 mL: Flam. Liq. 2, Eye Irrit. 2, EUH208 for linalool and citral.</summary>
    public static LabelFacts Spray { get; } = new(
        "Fig", "room-spray-alcohol", new(100m, true), LabelScheme.EuropeanUnion, SprayHazards(100m), [], "N1QV-R02N-J00M-WQD5", Maker, LabelWording.Usual, Batch);

    /// <summary>The same in 30 mL, with the relief of a small pack.</summary>
    public static LabelFacts SmallSpray { get; } = Spray with
    {
        Net = new(30m, true), Hazards = SprayHazards(30m), Wording = LabelWording.Usual with { UsesSmallPackRelief = true },
    };

    /// <summary>The same under the US Acts, its flash point measured.</summary>
    public static LabelFacts UsSpray { get; } = Spray with
    {
        Scheme = LabelScheme.UnitedStates, Ufi = null,
        Hazards = LabelHazards.Of(FhsaLabel.For([HazardCategory.FlamLiq2, HazardCategory.EyeIrrit2], new(17m, true))),
    };

    /// <summary>Tonka, a candle of 220 g: Skin Sens. 1 and Aquatic Chronic 3.</summary>
    public static LabelFacts Candle { get; } = Spray with
    {
        ScentName = "Tonka", ProductKind = "container-candle", Net = new(220m, false), Ufi = "N1QV-R02N-J00M-WQD5",
        Hazards = LabelHazards.Of(
            HazardLabel.For([new(HazardCategory.SkinSens1), new(HazardCategory.AquaticChronic3)], new LabelSituation(), names: ["coumarin", "cinnamal"]), []),
        Batch = Batch with { Code = "CN-4", Address = "https://studio.example/finished/CN-4" },
    };

    /// <summary>Vetiver, a reed diffuser of 100 mL: skin and eye irritation, sensitising, Aquatic Chronic 2.</summary>
    public static LabelFacts Diffuser { get; } = Spray with
    {
        ScentName = "Vetiver", ProductKind = "reed-diffuser",
        Hazards = LabelHazards.Of(
            HazardLabel.For(
                [new(HazardCategory.SkinIrrit2), new(HazardCategory.EyeIrrit2), new(HazardCategory.SkinSens1), new(HazardCategory.AquaticChronic2)],
                new LabelSituation(100m), names: ["limonene", "citral", "eugenol"]),
            []),
        Batch = Batch with { Code = "RD-2", Address = "https://studio.example/finished/RD-2" },
    };

    /// <summary>Nothing is classed and nothing is known of batch or maker's address.</summary>
    public static LabelFacts Bare { get; } = new(
        "Linen", "sachet", new(20m, false), LabelScheme.EuropeanUnion, LabelHazards.None, [], null, new("Quince Yard Studio", null, null), LabelWording.Usual, null);

    private static LabelHazards SprayHazards(decimal millilitres) => LabelHazards.Of(
        HazardLabel.For([new(HazardCategory.FlamLiq2), new(HazardCategory.EyeIrrit2)], new LabelSituation(millilitres)), []) with
    {
        Supplemental = [new("EUH208", "Contains linalool, citral. May produce an allergic reaction.")],
    };
}
