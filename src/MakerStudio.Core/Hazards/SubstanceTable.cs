using System.Collections.Frozen;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>How sure the memory of a row is.</summary>
public enum Confidence
{
    Low,
    Medium,
    High,
}

/// <summary>A row of the table: what the sheets of most suppliers say of a substance.</summary>
/// <param name="Classes">As a sheet writes them.</param>
/// <param name="Limits">Specific limits in per cent: "Skin Sens. 1A 0.01"; apart by semicolons.</param>
/// <param name="Oral">Acute toxicity estimate in mg/kg.</param>
/// <param name="Mist">Acute toxicity estimate in mg/l, dust or mist.</param>
/// <param name="AlsoSeen">Where sheets differ, and what to check.</param>
public sealed record SubstanceRow(
    string Name,
    string Cas,
    string? Ec,
    string Classes,
    Confidence Confidence,
    string? Synonym = null,
    string? Limits = null,
    decimal? Oral = null,
    decimal? Mist = null,
    int? AcuteM = null,
    int? ChronicM = null,
    bool DriesSkin = false,
    string? AlsoSeen = null)
{
    /// <summary>The row as a substance, with the table named as its source.</summary>
    public ClassifiedSubstance ToSubstance() => new(Name, Cas, new(
        ClassificationText.Parse(Classes).Entries,
        SpecificLimitText.Parse(Limits).Limits,
        ReadEstimates(),
        AcuteM,
        ChronicM,
        driesSkin: DriesSkin,
        from: SubstanceTable.Source));

    private IEnumerable<AcuteEstimate> ReadEstimates()
    {
        if (Oral is { } oral)
        {
            yield return new(AcuteRoute.Oral, oral);
        }

        if (Mist is { } mist)
        {
            yield return new(AcuteRoute.InhalationDustOrMist, mist);
        }
    }
}

/// <summary>
/// Substances of home fragrance with the classes that most suppliers state: harmonised ones of CLP Annex VI and the
/// registrants' own, up to about 2024. All from memory; defaults that the supplier's sheet overrules.
/// </summary>
public static class SubstanceTable
{
    public static Citation Source { get; } = new("Table of substances: CLP Annex VI and usual supplier classifications to about 2024", DataStatus.Memory);

    public static IReadOnlyList<SubstanceRow> Rows { get; } =
    [
        new("ethanol", "64-17-5", "200-578-6", "Flam. Liq. 2 H225; Eye Irrit. 2 H319", Confidence.High, Synonym: "alcohol denat.", Limits: "Eye Irrit. 2 50", AlsoSeen: "H225 harmonised; H319 with its limit is the registrants' own; a review of CMR properties is open"),
        new("propan-2-ol", "67-63-0", "200-661-7", "Flam. Liq. 2 H225; Eye Irrit. 2 H319; STOT SE 3 H336", Confidence.High, Synonym: "isopropanol"),
        new("2-methylpropan-2-ol", "75-65-0", "200-889-7", "Flam. Liq. 2 H225; Acute Tox. 4 H332; Eye Irrit. 2 H319; STOT SE 3 H335", Confidence.High, Synonym: "tert-butanol"),
        new("denatonium benzoate", "3734-33-6", "223-095-2", "Acute Tox. 4 H302; Acute Tox. 4 H332; Skin Irrit. 2 H315; Eye Dam. 1 H318; Aquatic Chronic 3 H412", Confidence.Medium),
        new("methanol", "67-56-1", "200-659-6", "Flam. Liq. 2 H225; Acute Tox. 3 H301 H311 H331; STOT SE 1 H370", Confidence.High, Limits: "STOT SE 1 10; STOT SE 2 3", AlsoSeen: "child-resistant closure from 3 %"),
        new("dipropylene glycol", "25265-71-8", "246-770-3", "not classified", Confidence.High, Synonym: "DPG"),
        new("propylene glycol", "57-55-6", "200-338-0", "not classified", Confidence.High, Synonym: "propane-1,2-diol"),
        new("glycerol", "56-81-5", "200-289-5", "not classified", Confidence.High),
        new("dipropylene glycol methyl ether", "34590-94-8", "252-104-2", "not classified", Confidence.High, Synonym: "DPGME, DPM", AlsoSeen: "a Community exposure limit exists"),
        new("3-methoxy-3-methylbutan-1-ol", "56539-66-3", "260-252-4", "Eye Irrit. 2 H319", Confidence.Medium, Synonym: "MMB"),
        new("2-(2-ethoxyethoxy)ethanol", "111-90-0", "203-919-7", "not classified", Confidence.Medium, Synonym: "ethoxydiglycol"),
        new("2,2-dimethyl-1,3-dioxolan-4-ylmethanol", "100-79-8", "202-888-7", "Eye Irrit. 2 H319", Confidence.Medium, Synonym: "isopropylidene glycerol, solketal"),
        new("triethyl citrate", "77-93-0", "201-070-7", "not classified", Confidence.High),
        new("isopropyl myristate", "110-27-0", "203-751-4", "not classified", Confidence.High, Synonym: "IPM"),
        new("diethyl phthalate", "84-66-2", "201-550-6", "not classified", Confidence.High, Synonym: "DEP", AlsoSeen: "under EU endocrine evaluation"),
        new("benzyl alcohol", "100-51-6", "202-859-9", "Acute Tox. 4 H302; Eye Irrit. 2 H319; Skin Sens. 1B H317", Confidence.Medium, Oral: 1200m, AlsoSeen: "older sheets: Acute Tox. 4 H302 H332 only; check the latest ATP"),
        new("benzyl benzoate", "120-51-4", "204-402-9", "Acute Tox. 4 H302; Aquatic Acute 1 H400; Aquatic Chronic 2 H411", Confidence.High, AcuteM: 1, AlsoSeen: "harmonised without Aquatic Acute 1"),
        new("benzyl salicylate", "118-58-1", "204-262-9", "Skin Sens. 1B H317; Eye Irrit. 2 H319; Aquatic Chronic 3 H412", Confidence.Medium, AlsoSeen: "harmonised for Skin Sens. 1B alone"),
        new("d-limonene", "5989-27-5", "227-813-5", "Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 3 H412", Confidence.High, Synonym: "(R)-p-mentha-1,8-diene", AcuteM: 1, AlsoSeen: "17th ATP; suppliers still showing Aquatic Chronic 1 use the older group entry 601-029-00-7"),
        new("linalool", "78-70-6", "201-134-4", "Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319", Confidence.High, AlsoSeen: "harmonised for Skin Sens. 1B alone"),
        new("linalyl acetate", "115-95-7", "204-116-4", "Skin Irrit. 2 H315; Skin Sens. 1B H317; Eye Irrit. 2 H319", Confidence.Medium, AlsoSeen: "some without Eye Irrit. 2"),
        new("citral", "5392-40-5", "226-394-6", "Skin Irrit. 2 H315; Skin Sens. 1 H317; Eye Irrit. 2 H319", Confidence.High, AlsoSeen: "some with Skin Sens. 1B"),
        new("citronellol", "106-22-9", "203-375-0", "Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1B H317", Confidence.High),
        new("geraniol", "106-24-1", "203-377-1", "Skin Irrit. 2 H315; Eye Dam. 1 H318; Skin Sens. 1 H317", Confidence.High),
        new("nerol", "106-25-2", "203-378-7", "Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1B H317", Confidence.Medium),
        new("geranyl acetate", "105-87-3", "203-341-5", "Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Chronic 3 H412", Confidence.Medium),
        new("eugenol", "97-53-0", "202-589-1", "Eye Irrit. 2 H319; Skin Sens. 1B H317", Confidence.High, AlsoSeen: "some with Acute Tox. 4 H302"),
        new("isoeugenol", "97-54-1", "202-590-7", "Skin Sens. 1A H317; Acute Tox. 4 H302 H312; Skin Irrit. 2 H315; Eye Irrit. 2 H319; STOT SE 3 H335", Confidence.High, Limits: "Skin Sens. 1A 0.01", AlsoSeen: "harmonised for Skin Sens. 1A alone"),
        new("cinnamal", "104-55-2", "203-213-9", "Skin Sens. 1A H317; Acute Tox. 4 H312; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Aquatic Chronic 3 H412", Confidence.Medium, Synonym: "cinnamic aldehyde", Limits: "Skin Sens. 1A 0.01", AlsoSeen: "check the ATP of the harmonised limit"),
        new("cinnamyl alcohol", "104-54-1", "203-212-3", "Skin Sens. 1B H317; Skin Irrit. 2 H315", Confidence.Medium, AlsoSeen: "some without Skin Irrit. 2"),
        new("coumarin", "91-64-5", "202-086-7", "Acute Tox. 4 H302; Skin Sens. 1B H317; Aquatic Chronic 3 H412", Confidence.Medium, AlsoSeen: "some with Acute Tox. 3 H301 and STOT RE 2"),
        new("hexyl cinnamal", "101-86-0", "202-983-3", "Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 2 H411", Confidence.Medium, AcuteM: 1),
        new("amyl cinnamal", "122-40-7", "204-541-5", "Skin Sens. 1B H317; Aquatic Chronic 2 H411", Confidence.Medium),
        new("amylcinnamyl alcohol", "101-85-9", "202-982-8", "Skin Sens. 1B H317", Confidence.Low),
        new("benzyl cinnamate", "103-41-3", "203-109-3", "Skin Sens. 1B H317; Aquatic Chronic 2 H411", Confidence.Medium),
        new("butylphenyl methylpropional", "80-54-6", "201-289-8", "Repr. 1B H360Fd; Acute Tox. 4 H302; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Chronic 3 H412", Confidence.High, Synonym: "lilial, p-BMHCA", AlsoSeen: "from 0.3 % not for the general public (REACH Annex XVII, entry 30)"),
        new("hydroxyisohexyl 3-cyclohexene carboxaldehyde", "31906-04-4", "250-863-4", "Skin Sens. 1A H317", Confidence.High, Synonym: "HICC, lyral"),
        new("alpha-isomethyl ionone", "127-51-5", "204-846-3", "Aquatic Chronic 2 H411; Skin Irrit. 2 H315; Skin Sens. 1B H317", Confidence.Medium, AlsoSeen: "some with Aquatic Chronic 2 alone"),
        new("beta-ionone", "14901-07-6", "238-969-9", "Aquatic Chronic 2 H411", Confidence.Medium),
        new("hydroxycitronellal", "107-75-5", "203-518-7", "Eye Irrit. 2 H319; Skin Sens. 1B H317", Confidence.High),
        new("farnesol", "4602-84-0", "225-004-1", "Skin Sens. 1B H317; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Aquatic Acute 1 H400; Aquatic Chronic 2 H411", Confidence.Low, AlsoSeen: "aquatic classes vary"),
        new("anise alcohol", "105-13-5", "203-273-6", "Acute Tox. 4 H302; Eye Dam. 1 H318; Skin Sens. 1B H317", Confidence.Medium, Synonym: "anisyl alcohol", AlsoSeen: "some with Eye Irrit. 2"),
        new("methyl 2-octynoate", "111-12-6", "203-836-6", "Acute Tox. 4 H302; Skin Sens. 1A H317; Aquatic Chronic 2", Confidence.Low),
        new("vanillin", "121-33-5", "204-465-2", "Eye Irrit. 2 H319", Confidence.High),
        new("ethyl vanillin", "121-32-4", "204-464-7", "Eye Irrit. 2 H319", Confidence.Medium),
        new("galaxolide", "1222-05-5", "214-946-9", "Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.High, Synonym: "HHCB, hexamethylindanopyran", AcuteM: 1, ChronicM: 1),
        new("tonalide", "21145-77-7", "244-240-6", "Acute Tox. 4 H302; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, Synonym: "AHTN", AcuteM: 1, ChronicM: 1, AlsoSeen: "also CAS 1506-02-1 / EC 216-133-4"),
        new("OTNE", "54464-57-2", "259-174-3", "Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Chronic 1 H410", Confidence.High, Synonym: "iso E super, tetramethyl acetyloctahydronaphthalenes", ChronicM: 1),
        new("ambroxide", "6790-58-5", "229-861-2", "Aquatic Chronic 2 H411", Confidence.Low, AlsoSeen: "from not classified to Aquatic Chronic 4"),
        new("methyl dihydrojasmonate", "24851-98-7", "246-495-9", "not classified", Confidence.High),
        new("dihydromyrcenol", "18479-58-8", "242-362-4", "Skin Irrit. 2 H315; Eye Irrit. 2 H319", Confidence.High, Synonym: "2,6-dimethyloct-7-en-2-ol"),
        new("alpha-pinene", "80-56-8", "201-291-9", "Flam. Liq. 3 H226; Acute Tox. 4 H302; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.High, AcuteM: 1, ChronicM: 1),
        new("beta-pinene", "127-91-3", "204-872-5", "Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, AcuteM: 1, ChronicM: 1),
        new("gamma-terpinene", "99-85-4", "202-794-6", "Flam. Liq. 3 H226; Asp. Tox. 1 H304; Aquatic Chronic 2 H411", Confidence.Medium),
        new("terpinolene", "586-62-9", "209-578-0", "Asp. Tox. 1 H304; Skin Sens. 1B H317; Aquatic Acute 1; Aquatic Chronic 1", Confidence.Medium, AcuteM: 1, ChronicM: 1),
        new("p-cymene", "99-87-6", "202-796-7", "Flam. Liq. 3 H226; Acute Tox. 3 H331; Asp. Tox. 1 H304; Aquatic Chronic 2 H411", Confidence.Medium),
        new("beta-caryophyllene", "87-44-5", "201-746-1", "Asp. Tox. 1 H304; Skin Sens. 1B H317; Aquatic Chronic 4 H413", Confidence.Medium),
        new("alpha-terpineol", "98-55-5", "202-680-6", "Skin Irrit. 2 H315; Eye Irrit. 2 H319", Confidence.High),
        new("camphor", "76-22-2", "200-945-0", "Flam. Sol. 2 H228; Acute Tox. 4 H302 H332; STOT SE 2 H371", Confidence.Medium),
        new("menthol", "2216-51-5", "218-690-9", "Skin Irrit. 2 H315; Eye Irrit. 2 H319", Confidence.High, Synonym: "l-menthol", AlsoSeen: "racemate CAS 89-78-1 / EC 201-939-0"),
        new("eucalyptol", "470-82-6", "207-431-5", "Flam. Liq. 3 H226; Skin Sens. 1B H317", Confidence.High, Synonym: "1,8-cineole"),
        new("carvone (L)", "6485-40-1", "229-352-5", "Skin Sens. 1B H317", Confidence.Medium),
        new("anethole (trans)", "4180-23-8", "224-052-0", "Skin Sens. 1B H317; Aquatic Chronic 2 H411", Confidence.Medium, AlsoSeen: "some with Aquatic Chronic 3 or none"),
        new("benzaldehyde", "100-52-7", "202-860-4", "Acute Tox. 4 H302 H332; Skin Irrit. 2 H315; Eye Irrit. 2 H319; STOT SE 3 H335; Aquatic Chronic 3 H412", Confidence.Medium, AlsoSeen: "harmonised for Acute Tox. 4 H302 alone"),
        new("methyl salicylate", "119-36-8", "204-317-7", "Acute Tox. 4 H302; Skin Sens. 1B H317; Repr. 2 H361d; Aquatic Chronic 3 H412", Confidence.High, Oral: 890m),
        new("hexyl salicylate", "6259-76-3", "228-408-6", "Skin Irrit. 2 H315; Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, AcuteM: 1, ChronicM: 1, AlsoSeen: "Repr. 2 was proposed"),
        new("amyl salicylate", "2050-08-0", "218-080-2", "Acute Tox. 4 H302; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, AcuteM: 1, ChronicM: 1),
        new("acetyl cedrene", "32388-55-9", "251-020-3", "Skin Sens. 1B H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, Synonym: "methyl cedryl ketone", AcuteM: 1, ChronicM: 1),
        new("delta-damascone", "57378-68-4", "260-709-8", "Acute Tox. 4 H302; Skin Irrit. 2 H315; Skin Sens. 1A H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, Synonym: "rose ketone", AcuteM: 1, ChronicM: 1),
        new("piperonal", "120-57-0", "204-409-7", "Skin Sens. 1B H317", Confidence.Low, Synonym: "heliotropin", AlsoSeen: "an opinion on toxicity to reproduction was under way: check"),
        new("sweet orange oil", "8028-48-6", "232-433-8", "Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1 H317; Aquatic Chronic 2 H411", Confidence.Medium, Synonym: "Citrus sinensis peel oil expressed"),
        new("lavender oil", "8000-28-0", "289-995-2", "Asp. Tox. 1 H304; Skin Irrit. 2 H315; Skin Sens. 1B H317; Eye Irrit. 2 H319; Aquatic Chronic 3 H412", Confidence.Low, Synonym: "Lavandula angustifolia oil", AlsoSeen: "varies with the oil"),
        new("2-phenoxyethanol", "122-99-6", "204-589-7", "Acute Tox. 4 H302; STOT SE 3 H335; Eye Dam. 1 H318", Confidence.High, Synonym: "phenoxyethanol", Oral: 1394m, AlsoSeen: "17th ATP"),
        new("1,2-benzisothiazol-3(2H)-one", "2634-33-5", "220-120-9", "Acute Tox. 2 H330; Acute Tox. 4 H302; Skin Irrit. 2 H315; Eye Dam. 1 H318; Skin Sens. 1A H317; Aquatic Acute 1 H400; Aquatic Chronic 1 H410", Confidence.Medium, Synonym: "BIT", Limits: "Skin Sens. 1A 0.036", Oral: 450m, Mist: 0.21m, AcuteM: 1, ChronicM: 1, AlsoSeen: "sheets before 2025: Skin Sens. 1 from 0.05 %, no H330 and no H410"),
        new("C(M)IT/MIT (3:1)", "55965-84-9", null, "Acute Tox. 2 H330 H310; Acute Tox. 3 H301; Skin Corr. 1C H314; Eye Dam. 1; Skin Sens. 1A H317; Aquatic Acute 1; Aquatic Chronic 1", Confidence.High, Limits: "Skin Corr. 1C 0.6; Skin Irrit. 2 0.06; Eye Dam. 1 0.6; Eye Irrit. 2 0.06; Skin Sens. 1A 0.0015", AcuteM: 100, ChronicM: 100),
        new("potassium sorbate", "24634-61-5", "246-376-1", "Eye Irrit. 2 H319", Confidence.Medium),
        new("sodium benzoate", "532-32-1", "208-534-8", "Eye Irrit. 2 H319", Confidence.High),
        new("polysorbate 20", "9005-64-5", "500-018-3", "not classified", Confidence.High),
        new("PEG-40 hydrogenated castor oil", "61788-85-0", "500-147-5", "not classified", Confidence.High),
        new("isoparaffin C11-C13", "90622-58-5", "920-901-0", "Asp. Tox. 1 H304", Confidence.Medium, Synonym: "diffuser base", DriesSkin: true),
        new("paraffin wax", "8002-74-2", "232-315-6", "not classified", Confidence.High),
        new("hydrogenated soybean oil", "8016-70-4", "232-410-2", "not classified", Confidence.High, Synonym: "soy wax"),
        new("beeswax", "8012-89-3", "232-383-7", "not classified", Confidence.High),
        new("coconut wax/oil", "8001-31-8", "232-282-8", "not classified", Confidence.High),
        new("water", "7732-18-5", "231-791-2", "not classified", Confidence.High),
    ];

    private static readonly FrozenDictionary<string, ClassifiedSubstance> ByCas =
        Rows.ToFrozenDictionary(row => row.Cas, row => row.ToSubstance(), StringComparer.Ordinal);

    /// <summary>Null for a substance that is not in the table: then nothing is known of it.</summary>
    public static ClassifiedSubstance? Find(string cas) => ByCas.GetValueOrDefault(cas);
}
