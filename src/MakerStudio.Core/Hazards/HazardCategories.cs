using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>What a category is called and what a label says for it.</summary>
/// <param name="Rank">Severity within its class; higher is more severe.</param>
/// <param name="Name">As it is written on a safety data sheet: "Skin Sens. 1B".</param>
/// <param name="Code">The hazard statement's code; two joined by + where the category has two.</param>
/// <param name="Statement">The text of the hazard statement, in English.</param>
/// <param name="Prevention">P codes, apart by spaces; combined ones with +.</param>
/// <param name="From">Of the label elements.</param>
public sealed record CategoryFacts(
    HazardCategory Category,
    HazardClass Class,
    int Rank,
    string Name,
    string Code,
    string Statement,
    Pictogram? Pictogram,
    SignalWord Signal,
    string Prevention,
    string Response,
    string Storage,
    string Disposal,
    Citation From);

/// <summary>
/// Every category known here, with its label elements from the label tables of CLP Annex I. The P codes are those of
/// about 2021. Only the row of flammable liquids was read in the text; the others are from memory.
/// </summary>
public static class HazardCategories
{
    public static IReadOnlyList<CategoryFacts> All { get; } =
    [
        new(HazardCategory.FlamLiq1, HazardClass.FlammableLiquid, 4, "Flam. Liq. 1", "H224", "Extremely flammable liquid and vapour", Pictogram.Ghs02, SignalWord.Danger, "P210 P233 P240 P241 P242 P243 P280", "P303+P361+P353 P370+P378", "P403+P235", "P501", new("CLP Annex I, Table 2.6.2", DataStatus.Read)),
        new(HazardCategory.FlamLiq2, HazardClass.FlammableLiquid, 3, "Flam. Liq. 2", "H225", "Highly flammable liquid and vapour", Pictogram.Ghs02, SignalWord.Danger, "P210 P233 P240 P241 P242 P243 P280", "P303+P361+P353 P370+P378", "P403+P235", "P501", new("CLP Annex I, Table 2.6.2", DataStatus.Read)),
        new(HazardCategory.FlamLiq3, HazardClass.FlammableLiquid, 2, "Flam. Liq. 3", "H226", "Flammable liquid and vapour", Pictogram.Ghs02, SignalWord.Warning, "P210 P233 P240 P241 P242 P243 P280", "P303+P361+P353 P370+P378", "P403+P235", "P501", new("CLP Annex I, Table 2.6.2", DataStatus.Read)),
        new(HazardCategory.FlamLiq4, HazardClass.FlammableLiquid, 1, "Flam. Liq. 4", "H227", "Combustible liquid", null, SignalWord.Warning, "P210 P280", "P370+P378", "P403", "P501", new("UN GHS 2.6", DataStatus.Memory)),
        new(HazardCategory.Aerosol1, HazardClass.Aerosol, 3, "Aerosol 1", "H222+H229", "Extremely flammable aerosol. Pressurised container: May burst if heated", Pictogram.Ghs02, SignalWord.Danger, "P210 P211 P251", "", "P410+P412", "", new("CLP Annex I, Table 2.3.2", DataStatus.Memory)),
        new(HazardCategory.Aerosol2, HazardClass.Aerosol, 2, "Aerosol 2", "H223+H229", "Flammable aerosol. Pressurised container: May burst if heated", Pictogram.Ghs02, SignalWord.Warning, "P210 P211 P251", "", "P410+P412", "", new("CLP Annex I, Table 2.3.2", DataStatus.Memory)),
        new(HazardCategory.Aerosol3, HazardClass.Aerosol, 1, "Aerosol 3", "H229", "Pressurised container: May burst if heated", null, SignalWord.Warning, "P210 P251", "", "P410+P412", "", new("CLP Annex I, Table 2.3.2", DataStatus.Memory)),
        new(HazardCategory.FlamSol1, HazardClass.FlammableSolid, 2, "Flam. Sol. 1", "H228", "Flammable solid", Pictogram.Ghs02, SignalWord.Danger, "P210 P240 P241 P280", "P370+P378", "", "", new("CLP Annex I, Table 2.7.2", DataStatus.Memory)),
        new(HazardCategory.FlamSol2, HazardClass.FlammableSolid, 1, "Flam. Sol. 2", "H228", "Flammable solid", Pictogram.Ghs02, SignalWord.Warning, "P210 P240 P241 P280", "P370+P378", "", "", new("CLP Annex I, Table 2.7.2", DataStatus.Memory)),
        new(HazardCategory.MetCorr1, HazardClass.CorrosiveToMetals, 1, "Met. Corr. 1", "H290", "May be corrosive to metals", Pictogram.Ghs05, SignalWord.Warning, "P234", "P390", "P406", "", new("CLP Annex I, Table 2.16.2", DataStatus.Memory)),
        new(HazardCategory.AcuteTox1Oral, HazardClass.AcuteOral, 4, "Acute Tox. 1 (oral)", "H300", "Fatal if swallowed", Pictogram.Ghs06, SignalWord.Danger, "P264 P270", "P301+P310 P321 P330", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox2Oral, HazardClass.AcuteOral, 3, "Acute Tox. 2 (oral)", "H300", "Fatal if swallowed", Pictogram.Ghs06, SignalWord.Danger, "P264 P270", "P301+P310 P321 P330", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox3Oral, HazardClass.AcuteOral, 2, "Acute Tox. 3 (oral)", "H301", "Toxic if swallowed", Pictogram.Ghs06, SignalWord.Danger, "P264 P270", "P301+P310 P321 P330", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox4Oral, HazardClass.AcuteOral, 1, "Acute Tox. 4 (oral)", "H302", "Harmful if swallowed", Pictogram.Ghs07, SignalWord.Warning, "P264 P270", "P301+P312 P330", "", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox1Dermal, HazardClass.AcuteDermal, 4, "Acute Tox. 1 (dermal)", "H310", "Fatal in contact with skin", Pictogram.Ghs06, SignalWord.Danger, "P262 P264 P270 P280", "P302+P352 P310 P321 P361+P364", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox2Dermal, HazardClass.AcuteDermal, 3, "Acute Tox. 2 (dermal)", "H310", "Fatal in contact with skin", Pictogram.Ghs06, SignalWord.Danger, "P262 P264 P270 P280", "P302+P352 P310 P321 P361+P364", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox3Dermal, HazardClass.AcuteDermal, 2, "Acute Tox. 3 (dermal)", "H311", "Toxic in contact with skin", Pictogram.Ghs06, SignalWord.Danger, "P280", "P302+P352 P312 P321 P361+P364", "P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox4Dermal, HazardClass.AcuteDermal, 1, "Acute Tox. 4 (dermal)", "H312", "Harmful in contact with skin", Pictogram.Ghs07, SignalWord.Warning, "P280", "P302+P352 P312 P321 P362+P364", "", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox1Inhalation, HazardClass.AcuteInhalation, 4, "Acute Tox. 1 (inhalation)", "H330", "Fatal if inhaled", Pictogram.Ghs06, SignalWord.Danger, "P260 P271 P284", "P304+P340 P310 P320", "P403+P233 P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox2Inhalation, HazardClass.AcuteInhalation, 3, "Acute Tox. 2 (inhalation)", "H330", "Fatal if inhaled", Pictogram.Ghs06, SignalWord.Danger, "P260 P271 P284", "P304+P340 P310 P320", "P403+P233 P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox3Inhalation, HazardClass.AcuteInhalation, 2, "Acute Tox. 3 (inhalation)", "H331", "Toxic if inhaled", Pictogram.Ghs06, SignalWord.Danger, "P261 P271", "P304+P340 P311 P321", "P403+P233 P405", "P501", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.AcuteTox4Inhalation, HazardClass.AcuteInhalation, 1, "Acute Tox. 4 (inhalation)", "H332", "Harmful if inhaled", Pictogram.Ghs07, SignalWord.Warning, "P261 P271", "P304+P340 P312", "", "", new("CLP Annex I, Table 3.1.3", DataStatus.Memory)),
        new(HazardCategory.SkinCorr1A, HazardClass.Skin, 5, "Skin Corr. 1A", "H314", "Causes severe skin burns and eye damage", Pictogram.Ghs05, SignalWord.Danger, "P260 P264 P280", "P301+P330+P331 P303+P361+P353 P363 P304+P340 P310 P321 P305+P351+P338", "P405", "P501", new("CLP Annex I, Table 3.2.5", DataStatus.Memory)),
        new(HazardCategory.SkinCorr1, HazardClass.Skin, 4, "Skin Corr. 1", "H314", "Causes severe skin burns and eye damage", Pictogram.Ghs05, SignalWord.Danger, "P260 P264 P280", "P301+P330+P331 P303+P361+P353 P363 P304+P340 P310 P321 P305+P351+P338", "P405", "P501", new("CLP Annex I, Table 3.2.5", DataStatus.Memory)),
        new(HazardCategory.SkinCorr1B, HazardClass.Skin, 3, "Skin Corr. 1B", "H314", "Causes severe skin burns and eye damage", Pictogram.Ghs05, SignalWord.Danger, "P260 P264 P280", "P301+P330+P331 P303+P361+P353 P363 P304+P340 P310 P321 P305+P351+P338", "P405", "P501", new("CLP Annex I, Table 3.2.5", DataStatus.Memory)),
        new(HazardCategory.SkinCorr1C, HazardClass.Skin, 2, "Skin Corr. 1C", "H314", "Causes severe skin burns and eye damage", Pictogram.Ghs05, SignalWord.Danger, "P260 P264 P280", "P301+P330+P331 P303+P361+P353 P363 P304+P340 P310 P321 P305+P351+P338", "P405", "P501", new("CLP Annex I, Table 3.2.5", DataStatus.Memory)),
        new(HazardCategory.SkinIrrit2, HazardClass.Skin, 1, "Skin Irrit. 2", "H315", "Causes skin irritation", Pictogram.Ghs07, SignalWord.Warning, "P264 P280", "P302+P352 P321 P332+P313 P362+P364", "", "", new("CLP Annex I, Table 3.2.5", DataStatus.Memory)),
        new(HazardCategory.EyeDam1, HazardClass.Eye, 2, "Eye Dam. 1", "H318", "Causes serious eye damage", Pictogram.Ghs05, SignalWord.Danger, "P280", "P305+P351+P338 P310", "", "", new("CLP Annex I, Table 3.3.5", DataStatus.Memory)),
        new(HazardCategory.EyeIrrit2, HazardClass.Eye, 1, "Eye Irrit. 2", "H319", "Causes serious eye irritation", Pictogram.Ghs07, SignalWord.Warning, "P264 P280", "P305+P351+P338 P337+P313", "", "", new("CLP Annex I, Table 3.3.5", DataStatus.Memory)),
        new(HazardCategory.RespSens1A, HazardClass.RespiratorySensitisation, 3, "Resp. Sens. 1A", "H334", "May cause allergy or asthma symptoms or breathing difficulties if inhaled", Pictogram.Ghs08, SignalWord.Danger, "P261 P284", "P304+P340 P342+P311", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.RespSens1, HazardClass.RespiratorySensitisation, 2, "Resp. Sens. 1", "H334", "May cause allergy or asthma symptoms or breathing difficulties if inhaled", Pictogram.Ghs08, SignalWord.Danger, "P261 P284", "P304+P340 P342+P311", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.RespSens1B, HazardClass.RespiratorySensitisation, 1, "Resp. Sens. 1B", "H334", "May cause allergy or asthma symptoms or breathing difficulties if inhaled", Pictogram.Ghs08, SignalWord.Danger, "P261 P284", "P304+P340 P342+P311", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.SkinSens1A, HazardClass.SkinSensitisation, 3, "Skin Sens. 1A", "H317", "May cause an allergic skin reaction", Pictogram.Ghs07, SignalWord.Warning, "P261 P272 P280", "P302+P352 P333+P313 P321 P362+P364", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.SkinSens1, HazardClass.SkinSensitisation, 2, "Skin Sens. 1", "H317", "May cause an allergic skin reaction", Pictogram.Ghs07, SignalWord.Warning, "P261 P272 P280", "P302+P352 P333+P313 P321 P362+P364", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.SkinSens1B, HazardClass.SkinSensitisation, 1, "Skin Sens. 1B", "H317", "May cause an allergic skin reaction", Pictogram.Ghs07, SignalWord.Warning, "P261 P272 P280", "P302+P352 P333+P313 P321 P362+P364", "", "P501", new("CLP Annex I, Table 3.4.7", DataStatus.Memory)),
        new(HazardCategory.Muta1A, HazardClass.Mutagenicity, 3, "Muta. 1A", "H340", "May cause genetic defects", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.5.3", DataStatus.Memory)),
        new(HazardCategory.Muta1B, HazardClass.Mutagenicity, 2, "Muta. 1B", "H340", "May cause genetic defects", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.5.3", DataStatus.Memory)),
        new(HazardCategory.Muta2, HazardClass.Mutagenicity, 1, "Muta. 2", "H341", "Suspected of causing genetic defects", Pictogram.Ghs08, SignalWord.Warning, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.5.3", DataStatus.Memory)),
        new(HazardCategory.Carc1A, HazardClass.Carcinogenicity, 3, "Carc. 1A", "H350", "May cause cancer", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.6.3", DataStatus.Memory)),
        new(HazardCategory.Carc1B, HazardClass.Carcinogenicity, 2, "Carc. 1B", "H350", "May cause cancer", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.6.3", DataStatus.Memory)),
        new(HazardCategory.Carc2, HazardClass.Carcinogenicity, 1, "Carc. 2", "H351", "Suspected of causing cancer", Pictogram.Ghs08, SignalWord.Warning, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.6.3", DataStatus.Memory)),
        new(HazardCategory.Repr1A, HazardClass.Reproduction, 3, "Repr. 1A", "H360", "May damage fertility or the unborn child", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.7.3", DataStatus.Memory)),
        new(HazardCategory.Repr1B, HazardClass.Reproduction, 2, "Repr. 1B", "H360", "May damage fertility or the unborn child", Pictogram.Ghs08, SignalWord.Danger, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.7.3", DataStatus.Memory)),
        new(HazardCategory.Repr2, HazardClass.Reproduction, 1, "Repr. 2", "H361", "Suspected of damaging fertility or the unborn child", Pictogram.Ghs08, SignalWord.Warning, "P201 P202 P280", "P308+P313", "P405", "P501", new("CLP Annex I, Table 3.7.3", DataStatus.Memory)),
        new(HazardCategory.Lact, HazardClass.Lactation, 1, "Lact.", "H362", "May cause harm to breast-fed children", null, SignalWord.None, "P201 P260 P263 P264 P270", "P308+P313", "", "", new("CLP Annex I, Table 3.7.3", DataStatus.Memory)),
        new(HazardCategory.StotSe1, HazardClass.StotSingle, 2, "STOT SE 1", "H370", "Causes damage to organs", Pictogram.Ghs08, SignalWord.Danger, "P260 P264 P270", "P308+P311 P321", "P405", "P501", new("CLP Annex I, Table 3.8.4", DataStatus.Memory)),
        new(HazardCategory.StotSe2, HazardClass.StotSingle, 1, "STOT SE 2", "H371", "May cause damage to organs", Pictogram.Ghs08, SignalWord.Warning, "P260 P264 P270", "P308+P311", "P405", "P501", new("CLP Annex I, Table 3.8.4", DataStatus.Memory)),
        new(HazardCategory.StotSe3Respiratory, HazardClass.StotRespiratoryIrritation, 1, "STOT SE 3 (respiratory)", "H335", "May cause respiratory irritation", Pictogram.Ghs07, SignalWord.Warning, "P261 P271", "P304+P340 P312", "P403+P233 P405", "P501", new("CLP Annex I, Table 3.8.4", DataStatus.Memory)),
        new(HazardCategory.StotSe3Narcotic, HazardClass.StotNarcotic, 1, "STOT SE 3 (narcotic)", "H336", "May cause drowsiness or dizziness", Pictogram.Ghs07, SignalWord.Warning, "P261 P271", "P304+P340 P312", "P403+P233 P405", "P501", new("CLP Annex I, Table 3.8.4", DataStatus.Memory)),
        new(HazardCategory.StotRe1, HazardClass.StotRepeated, 2, "STOT RE 1", "H372", "Causes damage to organs through prolonged or repeated exposure", Pictogram.Ghs08, SignalWord.Danger, "P260 P264 P270", "P314", "", "P501", new("CLP Annex I, Table 3.9.5", DataStatus.Memory)),
        new(HazardCategory.StotRe2, HazardClass.StotRepeated, 1, "STOT RE 2", "H373", "May cause damage to organs through prolonged or repeated exposure", Pictogram.Ghs08, SignalWord.Warning, "P260", "P314", "", "P501", new("CLP Annex I, Table 3.9.5", DataStatus.Memory)),
        new(HazardCategory.AspTox1, HazardClass.Aspiration, 1, "Asp. Tox. 1", "H304", "May be fatal if swallowed and enters airways", Pictogram.Ghs08, SignalWord.Danger, "", "P301+P310 P331", "P405", "P501", new("CLP Annex I, Table 3.10.2", DataStatus.Memory)),
        new(HazardCategory.AquaticAcute1, HazardClass.AquaticAcute, 1, "Aquatic Acute 1", "H400", "Very toxic to aquatic life", Pictogram.Ghs09, SignalWord.Warning, "P273", "P391", "", "P501", new("CLP Annex I, Table 4.1.4", DataStatus.Memory)),
        new(HazardCategory.AquaticChronic1, HazardClass.AquaticChronic, 4, "Aquatic Chronic 1", "H410", "Very toxic to aquatic life with long lasting effects", Pictogram.Ghs09, SignalWord.Warning, "P273", "P391", "", "P501", new("CLP Annex I, Table 4.1.4", DataStatus.Memory)),
        new(HazardCategory.AquaticChronic2, HazardClass.AquaticChronic, 3, "Aquatic Chronic 2", "H411", "Toxic to aquatic life with long lasting effects", Pictogram.Ghs09, SignalWord.None, "P273", "P391", "", "P501", new("CLP Annex I, Table 4.1.4", DataStatus.Memory)),
        new(HazardCategory.AquaticChronic3, HazardClass.AquaticChronic, 2, "Aquatic Chronic 3", "H412", "Harmful to aquatic life with long lasting effects", null, SignalWord.None, "P273", "", "", "P501", new("CLP Annex I, Table 4.1.4", DataStatus.Memory)),
        new(HazardCategory.AquaticChronic4, HazardClass.AquaticChronic, 1, "Aquatic Chronic 4", "H413", "May cause long lasting harmful effects to aquatic life", null, SignalWord.None, "P273", "", "", "P501", new("CLP Annex I, Table 4.1.4", DataStatus.Memory)),
        new(HazardCategory.Ozone1, HazardClass.OzoneLayer, 1, "Ozone 1", "H420", "Harms public health and the environment by destroying ozone in the upper atmosphere", Pictogram.Ghs07, SignalWord.Warning, "", "", "", "P502", new("CLP Annex I, Table 5.2", DataStatus.Memory)),
        new(HazardCategory.EdHuman1, HazardClass.EndocrineHuman, 2, "ED HH 1", "EUH380", "May cause endocrine disruption in humans", null, SignalWord.Danger, "P201 P202 P263 P280", "P308+P313", "P405", "P501", new("CLP Annex I, 3.11", DataStatus.Memory)),
        new(HazardCategory.EdHuman2, HazardClass.EndocrineHuman, 1, "ED HH 2", "EUH381", "Suspected of causing endocrine disruption in humans", null, SignalWord.Warning, "P201 P202 P263 P280", "P308+P313", "P405", "P501", new("CLP Annex I, 3.11", DataStatus.Memory)),
        new(HazardCategory.EdEnvironment1, HazardClass.EndocrineEnvironment, 2, "ED ENV 1", "EUH430", "May cause endocrine disruption in the environment", null, SignalWord.Danger, "P201 P202 P273", "P391", "P405", "P501", new("CLP Annex I, 4.2", DataStatus.Memory)),
        new(HazardCategory.EdEnvironment2, HazardClass.EndocrineEnvironment, 1, "ED ENV 2", "EUH431", "Suspected of causing endocrine disruption in the environment", null, SignalWord.Warning, "P201 P202 P273", "P391", "P405", "P501", new("CLP Annex I, 4.2", DataStatus.Memory)),
        new(HazardCategory.Pbt, HazardClass.Persistent, 1, "PBT", "EUH440", "Accumulates in the environment and living organisms including in humans", null, SignalWord.Danger, "P201 P202 P273", "P391", "", "P501", new("CLP Annex I, 4.3", DataStatus.Memory)),
        new(HazardCategory.Vpvb, HazardClass.VeryPersistent, 1, "vPvB", "EUH441", "Strongly accumulates in the environment and living organisms including in humans", null, SignalWord.Danger, "P201 P202 P273", "P391", "", "P501", new("CLP Annex I, 4.3", DataStatus.Memory)),
        new(HazardCategory.Pmt, HazardClass.Mobile, 1, "PMT", "EUH450", "Can cause long-lasting and diffuse contamination of water resources", null, SignalWord.Danger, "P201 P202 P273", "P391", "", "P501", new("CLP Annex I, 4.4", DataStatus.Memory)),
        new(HazardCategory.Vpvm, HazardClass.VeryMobile, 1, "vPvM", "EUH451", "Can cause very long-lasting and diffuse contamination of water resources", null, SignalWord.Danger, "P201 P202 P273", "P391", "", "P501", new("CLP Annex I, 4.4", DataStatus.Memory)),
    ];

    private static readonly CategoryFacts[] ByCategory = InEnumOrder();

    public static CategoryFacts Of(HazardCategory category) => ByCategory[(int)category];

    /// <summary>As it is written on a safety data sheet.</summary>
    public static string Name(HazardCategory category) => Of(category).Name;

    public static HazardClass ClassOf(HazardCategory category) => Of(category).Class;

    /// <summary>The more severe of two categories of one class.</summary>
    public static bool IsMoreSevere(HazardCategory one, HazardCategory other) => Of(one).Rank > Of(other).Rank;

    private static CategoryFacts[] InEnumOrder()
    {
        var facts = new CategoryFacts[All.Count];
        foreach (CategoryFacts each in All)
        {
            facts[(int)each.Category] = each;
        }

        return facts;
    }
}
