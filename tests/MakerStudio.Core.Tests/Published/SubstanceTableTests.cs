using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Rooms;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>The built-in substances against the collected tables and against each other.</summary>
public class SubstanceTableTests
{
    private static readonly Dictionary<char, double> AtomicWeight = new() { ['C'] = 12.011, ['H'] = 1.008, ['O'] = 15.999 };

    [Fact]
    public void Substances_EveryRow_AsCollected()
    {
        IReadOnlyList<PublishedRow> rows = PublishedTable.Rows("substances.csv", 54);
        Assert.Equal(rows.Select(row => row["cas"]).Order(), Substances.All.Select(substance => substance.Cas.Text).Order());
        Assert.All(rows, row =>
        {
            Substance ours = Find(row);
            Assert.Equal(row["name"], ours.Name);
            Assert.Equal(row.Number("density_g_mL"), (double)ours.Density.Value.Density.GramsPerMillilitre);
            Assert.Equal(row["density_source"] == "from memory", ours.Density.Source.Status == DataStatus.Memory);
            Assert.Equal(row.Has("bp_C_101kPa") ? row.Number("bp_C_101kPa") : null, ours.BoilingPoint?.Value);
            Assert.Equal(row.Has("flash_point_use_C") ? row["flash_point_use_C"].TrimStart('>') : null, ours.FlashPoint?.Value.Celsius.ToString(System.Globalization.CultureInfo.InvariantCulture));
            Assert.Equal(row["flash_point_use_C"].StartsWith('>'), ours.FlashPoint?.Value.IsAtLeast ?? false);
            Assert.Equal(row["flash_point_status"].Contains("memory", StringComparison.Ordinal), ours.FlashPoint?.Source.Status == DataStatus.Memory);
            Assert.Equal(row.Has("vp_25C_Pa") ? row.Number("vp_25C_Pa") : null, ours.VapourPressure?.At25);
        });
    }

    [Fact]
    public void MolarMass_EveryFormula_FromAtomicWeights() => Assert.All(Substances.All, substance => Near.Equal(
        AtomicWeight.Sum(atom => atom.Value * HeatOfCombustion.Atoms(substance.Formula, atom.Key)), substance.MolarMass, 0.0011));

    /// <summary>Boiling points from the Antoine constants, as worked out elsewhere; far from the handbook's only where the row says so.</summary>
    [Fact]
    public void Antoine_EveryRow_BoilsWhereTheTableSays()
    {
        IReadOnlyList<PublishedRow> rows = PublishedTable.Rows("antoine.csv", 42);
        Assert.All(rows, row =>
        {
            Antoine ours = Find(row).Antoine.First(set => set.A == row.Number("A_log10_Pa") && set.FromKelvin == row.Number("Tmin_K"));
            double boils = ours.Kelvin(Substance.StandardAtmosphere) - Antoine.ZeroCelsius;
            Near.Equal(row.Number("computed_bp_C"), boils, 0.0051);
            Near.Equal(Substance.StandardAtmosphere, ours.Pascal(boils + Antoine.ZeroCelsius), 1e-6);
        });
    }

    /// <summary>Vapour pressures the table works out from Antoine sets, printed to three digits.</summary>
    [Fact]
    public void VapourPressure_EveryAntoineRow_ToThreeDigits()
    {
        PublishedRow[] rows = [.. PublishedTable.Rows("substances.csv", 54).Where(row => row["vp_method"].StartsWith("Antoine", StringComparison.Ordinal))];
        Assert.Equal(34, rows.Length);
        Assert.All(rows, row =>
        {
            Antoine set = Find(row).AntoineNear(298.15)!;
            Near.Equal(1, set.Pascal(298.15) / row.Number("vp_25C_Pa"), 0.006);
            Near.Equal(1, set.Pascal(293.15) / row.Number("vp_20C_Pa"), 0.006);
            Assert.Equal(row["vp_method"].EndsWith("in range", StringComparison.Ordinal), set.IsInRange(293.15) && set.IsInRange(298.15));
        });
    }

    /// <summary>NIOSH Pocket Guide: ethanol 44 mmHg, propan-2-ol 33 mmHg at 20 °C (V).</summary>
    [Theory]
    [InlineData("64-17-5", 44)]
    [InlineData("67-63-0", 33)]
    public void VapourPressure_At20_AgreesWithNiosh(string cas, double torr) =>
        Near.Equal(torr, Substances.Find(CasNumber.Of(cas))!.AntoineNear(293.15)!.Pascal(293.15) / (Substance.StandardAtmosphere / 760), 0.5);

    /// <summary>Air over a liquid at its flash point is near its lower explosive limit: the same order (a plausibility check).</summary>
    [Fact]
    public void ExplosiveLimit_AndFlashPoint_AreOfOneOrder() => Assert.All(
        Substances.All.Where(substance => substance is { ExplosiveLimits: not null, FlashPoint: not null } && substance.Antoine.Count > 0),
        substance =>
        {
            double flash = substance.FlashPoint!.Value.Celsius + Antoine.ZeroCelsius;
            double percent = 100 * substance.AntoineNear(flash)!.Pascal(flash) / Substance.StandardAtmosphere;
            Assert.InRange(percent / substance.ExplosiveLimits!.Value.LowerPercent, 0.4, 2.5);
        });

    [Fact]
    public void TwoPointLine_MeetsBothPoints()
    {
        Substance linalool = Substances.Find(CasNumber.Of("78-70-6"))!;
        Antoine line = linalool.AntoineNear(300)!;
        Near.Equal(21, line.Pascal(298.15), 1e-6);
        Near.Equal(Substance.StandardAtmosphere, line.Pascal(197.0 + Antoine.ZeroCelsius), 1e-3);
        Assert.Equal(DataStatus.Memory, line.Source.Status);
    }

    [Fact]
    public void HeatOfCombustion_EveryRow() => Assert.All(PublishedTable.Rows("heat_of_combustion.csv", 14), row =>
    {
        CombustionHeat ours = HeatOfCombustion.Find(Find(row))!;
        Near.Equal(row.Number("gross_heat_of_combustion_kJ_mol"), ours.GrossKilojoulesPerMole, 0.051);
        Near.Equal(row.Number("net_heat_of_combustion_kJ_mol"), ours.NetKilojoulesPerMole, 0.051);
        Near.Equal(row.Number("gross_kJ_g"), ours.GrossKilojoulesPerGram, 0.0051);
        Near.Equal(row.Number("net_kJ_g"), ours.NetKilojoulesPerGram, 0.0051);
    });

    /// <summary>ChemSep (V): ethanol 1235, propan-2-ol 1830, tert-butyl alcohol 2424 kJ/mol net.</summary>
    [Theory]
    [InlineData("64-17-5", 1235)]
    [InlineData("67-63-0", 1830)]
    [InlineData("75-65-0", 2424)]
    public void HeatOfCombustion_AgreesWithChemSep(string cas, double net) =>
        Near.Equal(1, HeatOfCombustion.Find(Substances.Find(CasNumber.Of(cas))!)!.NetKilojoulesPerMole / net, 0.001);

    /// <summary>Within 0.13 % of CRC densities, acetone 0.27 %; ethanol is R 22's.</summary>
    [Fact]
    public void DensityByTemperature_EveryRow() => Assert.All(PublishedTable.Rows("density_temperature.csv", 7), row =>
    {
        if (row["cas"] == Substances.EthanolCas)
        {
            Near.Equal(1, R22.KilogramsPerCubicMetre(1, 20) / row.Number("rho_20C"), 0.0014);
            return;
        }

        LiquidDensities ours = ThermalExpansion.Find(CasNumber.Of(row["cas"]))!;
        Near.Equal(row.Number("rho_15C_kg_m3"), ours.At(15)!.Value, 1e-9);
        Near.Equal(row.Number("rho_40C"), ours.At(40)!.Value, 1e-9);
        Near.Equal(row.Number("expansion_20_30C_1e-3_per_K"), 1000 * ours.ExpansionPerKelvin, 0.025);
        Near.Equal(1, ours.At(row.Number("handbook_T_C"))!.Value / (1000 * row.Number("handbook_density_g_mL")), 0.0028);
        Assert.Null(ours.At(14.9));
    });

    [Fact]
    public void ExposureLimits_EveryRow_AsCollected()
    {
        IReadOnlyList<PublishedRow> rows = PublishedTable.Rows("exposure_limits.csv", 17);
        foreach (PublishedRow row in rows)
        {
            ExposureLimit[] ours = [.. ExposureLimits.For(CasNumber.Of(row["cas"])).Where(limit => limit.Name.StartsWith(row["limit"].Split(' ')[0], StringComparison.Ordinal))];
            string[] ppm = row["ppm"].Split('/', StringSplitOptions.TrimEntries);
            Assert.All(ppm, value => Assert.Contains(ours, limit => value.Length == 0
                ? limit.MilligramsPerCubicMetre == row.Number("mg_m3")
                : limit.Ppm == double.Parse(value, System.Globalization.CultureInfo.InvariantCulture)));
            Assert.All(ours, limit => Assert.Equal(row["type"].Contains("skin", StringComparison.Ordinal), limit.CountsSkin));
        }

        // Two rows give two limits each, and so does the one of propan-2-ol.
        Assert.Equal(19, ExposureLimits.All.Count);
    }

    /// <summary>ppm against mg/m³ as published side by side, which are rounded (V).</summary>
    [Fact]
    public void ExposureLimits_PpmAndMilligrams_AgreeWithinTheirRounding() => Assert.All(
        ExposureLimits.All.Where(limit => limit is { Ppm: not null, MilligramsPerCubicMetre: not null }),
        limit => Near.Equal(1, limit.InMilligrams(Substances.Find(limit.Cas)!.MolarMass) / limit.MilligramsPerCubicMetre!.Value, 0.03));

    /// <summary>1000 ppm of ethanol is 1883 mg/m³ and printed as 1900: the exact figure counts. Camphor is listed in mg/m³ alone.</summary>
    [Fact]
    public void ExposureLimit_InMilligrams_GoesByPpmWhereThereIsOne()
    {
        ExposureLimit ethanol = ExposureLimits.For(Substances.Ethanol.Cas).Single(limit => limit.Name == "OSHA PEL");
        Near.Equal(1883, ethanol.InMilligrams(Substances.Ethanol.MolarMass), 0.5);
        Assert.Equal(2, Assert.Single(ExposureLimits.For(CasNumber.Of("76-22-2"))).InMilligrams(152.237));
    }

    /// <summary>24.465 L/mol at 25 °C, 24.055 at 20 °C.</summary>
    [Fact]
    public void MolarVolume_AsTabled()
    {
        Near.Equal(24.465, MolarVolume.At25, 0.0005);
        Near.Equal(24.055, MolarVolume.At20, 0.0005);
        Near.Equal(1883, AirConcentration.Milligrams(1000, Substances.Ethanol.MolarMass), 0.5);
        Near.Equal(1000, AirConcentration.Ppm(AirConcentration.Milligrams(1000, 46.069), 46.069), 1e-9);
    }

    [Fact]
    public void WaxDensities_EveryRow_AsCollected()
    {
        PublishedRow[] rows = [.. PublishedTable.Rows("wax_density.csv", 7).Where(row => !row["density_g_mL"].Contains('%', StringComparison.Ordinal))];
        Assert.Equal(
            rows.Select(row => row["density_g_mL"].Split('-')).Select(range => (Numbers.Of(range[0]), Numbers.Of(range[^1]))),
            WaxDensities.All.Select(wax => (wax.Lowest, wax.Highest)));
        Assert.Equal(
            rows.Select(row => row["status"].StartsWith("found", StringComparison.Ordinal) ? DataStatus.Secondary : DataStatus.Memory),
            WaxDensities.All.Select(wax => wax.Source.Status));
    }

    private static Substance Find(PublishedRow row) => Substances.Find(CasNumber.Of(row["cas"]))!;
}
