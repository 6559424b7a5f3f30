using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>
/// Safety sheets of the sample studio's materials. The substances and their classes are real, as most suppliers state
/// them, from memory; shares, certificates and statements are invented.
/// </summary>
internal static class SampleSafetyList
{
    private const string NotClassified = "not classified";

    /// <summary>Null for what comes without a sheet: packaging, dried flowers.</summary>
    public static SetSafety? For(string material) => All.GetValueOrDefault(material)?.Copy();

    private static readonly Dictionary<string, SetSafety> All = new()
    {
        [FigOil] = Scent("Skin Sens. 1 H317; Aquatic Chronic 2 H411", 38, """
            dipropylene glycol; 25265-71-8; 25–50; not classified
            methyl dihydrojasmonate; 24851-98-7; 10–20; not classified
            linalool; 78-70-6; 5–10; Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319
            gamma-nonalactone; 104-61-0; 1–5; not classified
            hexyl cinnamal; 101-86-0; 1–5; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 2 H411
            galaxolide; 1222-05-5; 1–2.5; Aquatic Acute 1 H400; Aquatic Chronic 1 H410
            d-limonene; 5989-27-5; 1–2.5; Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 3 H412
            coumarin; 91-64-5; 0.5–1; Acute Tox. 4 H302; Skin Sens. 1B H317; Aquatic Chronic 3 H412
            vanillin; 121-33-5; 0.5–1; Eye Irrit. 2 H319
            citral; 5392-40-5; 0.1–0.5; Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319
            """, (26.4m, 34.2m, 100)) with { VanillinPercent = 0.8m },
        [QuinceOil] = Scent("Skin Sens. 1 H317; Eye Irrit. 2 H319; Aquatic Chronic 3 H412", 31, """
            triethyl citrate; 77-93-0; 25–50; not classified
            geraniol; 106-24-1; 1–5; Skin Irrit. 2 H315; Eye Dam. 1 H318; Skin Sens. 1 H317
            linalyl acetate; 115-95-7; 5–10; Skin Irrit. 2 H315; Skin Sens. 1B H317; Eye Irrit. 2 H319
            acetyl cedrene; 32388-55-9; 0.1–0.25; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410
            vanillin; 121-33-5; 3–5; Eye Irrit. 2 H319
            eugenol; 97-53-0; 0.5–1; Eye Irrit. 2 H319; Skin Sens. 1B H317
            cinnamal; 104-55-2; 0.1–0.25; Acute Tox. 4 H312; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1A H317; Aquatic Chronic 3 H412
            alpha-isomethyl ionone; 127-51-5; 1–2.5; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Chronic 2 H411
            """, (14.8m, 22.5m, 100)) with { VanillinPercent = 4.2m },
        [GreenFigOil] = Scent("Skin Sens. 1 H317; Aquatic Chronic 3 H412", 44, """
            dipropylene glycol; 25265-71-8; 25–50; not classified
            linalool; 78-70-6; 10–20; Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319
            d-limonene; 5989-27-5; 1–5; Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 3 H412
            hexyl cinnamal; 101-86-0; 1–2.5; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 2 H411
            citronellol; 106-22-9; 1–5; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1B H317
            gamma-nonalactone; 104-61-0; 1–5; not classified
            """, (31.5m, 44, 100)) with { PhthalateFree = null },
        [LinenOil] = Scent("Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319", 36, """
            linalyl acetate; 115-95-7; 10–20; Skin Irrit. 2 H315; Skin Sens. 1B H317; Eye Irrit. 2 H319
            linalool; 78-70-6; 5–10; Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319
            dihydromyrcenol; 18479-58-8; 5–10; Skin Irrit. 2 H315; Eye Irrit. 2 H319
            triethyl citrate; 77-93-0; 25–50; not classified
            coumarin; 91-64-5; 0.1–0.5; Acute Tox. 4 H302; Skin Sens. 1B H317; Aquatic Chronic 3 H412
            """, (19, 27.5m, 100)),
        [Bergamot] = Scent("Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319; Aquatic Chronic 3 H412", 96, """
            d-limonene; 5989-27-5; 35–45; Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 3 H412
            linalyl acetate; 115-95-7; 25–32; Skin Irrit. 2 H315; Skin Sens. 1B H317; Eye Irrit. 2 H319
            linalool; 78-70-6; 8–12; Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319
            gamma-terpinene; 99-85-4; 6–9
            beta-pinene; 127-91-3; 5–8
            citral; 5392-40-5; 0.3–0.8; Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319
            """, (6.2m, 9.8m, 100)) with { HoldsCitrus = true },
        [CedarLeaf] = Scent("Flam. Liq. 3 H226; Acute Tox. 4 H302; Asp. Tox. 1 H304", 92, """
            alpha-thujone; 546-80-5; 48–55; Acute Tox. 4 H302
            fenchone; 1195-79-5; 11–15; not classified
            sabinene; 3387-41-5; 8–12; Flam. Liq. 3 H226; Asp. Tox. 1 H304
            d-limonene; 5989-27-5; 1–2.5; Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 3 H412
            camphor; 76-22-2; 2–3
            """, (1.4m, 2.1m, 60)),
        [Ethanol] = FromTable("64-17-5"),
        [Dpg] = FromTable("25265-71-8"),
        [Dpm] = FromTable("34590-94-8"),
        [BenzylBenzoate] = FromTable("120-51-4"),
        [Polysorbate] = FromTable("9005-64-5"),
        [Preservative] = FromTable("122-99-6"),
        [Water] = FromTable("7732-18-5"),
        [SoyWax] = new() { Hazards = new() { Classes = NotClassified } },
        [Dye] = new() { Hazards = new() { Classes = NotClassified } },
    };

    private static SetSafety FromTable(string cas) => new() { Hazards = SafetyDefault.For(cas)!.Hazards };

    private static SetSafety Scent(string classes, decimal volatilePercent, string composition, (decimal HandContact, decimal Spray, decimal NoContact) most) => new()
    {
        Hazards = new() { Classes = classes },
        Composition = [.. CompositionText.Read(composition).Rows],
        VolatilePercent = volatilePercent,
        PhthalateFree = true,
        CmrFree = true,
        CertificateAmendment = "51",
        CertificateLimits =
        [
            new() { Category = "10A", MaxPercent = most.HandContact }, new() { Category = "10B", MaxPercent = most.Spray }, new() { Category = "12", MaxPercent = most.NoContact },
        ],
    };
}
