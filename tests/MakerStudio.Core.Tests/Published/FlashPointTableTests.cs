using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Flash points and activity against published and separately worked tables. Sources and statuses: Data/README.md.</summary>
public class FlashPointTableTests
{
    /// <summary>The published list, % vol and °C (Engineering ToolBox; Wikipedia; NFPA 325 from memory): V2. Whether it is by volume is disputed; that reading fits best and is the cautious one.</summary>
    private static readonly (double Percent, double Celsius)[] List =
        [(5, 62), (10, 49), (20, 36), (30, 29), (40, 26), (50, 24), (60, 22), (70, 21), (80, 20), (90, 17), (96, 17)];

    public static TheoryData<double, double> TwentyToNinety
    {
        get
        {
            var rows = new TheoryData<double, double>();
            foreach ((double percent, double celsius) in List.Where(row => row.Percent is >= 20 and <= 90))
            {
                rows.Add(percent, celsius);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(TwentyToNinety))]
    public void FlashPoint_TwentyToNinetyPercent_Within12OfTheList(double percent, double celsius)
    {
        var found = Assert.IsType<FlashPointResult.Estimated>(Of(EthanolStrength.FromPercentVolume(percent)));
        Near.Equal(celsius, (double)found.Value.Degrees, 1.2);
        Assert.Equal(FlashModel.Uniquac, found.Model);
        Assert.Equal(1.2, found.Error.Largest);
    }

    [Fact]
    public void FlashPoint_FiveModels_EveryRow()
    {
        string[] models = [.. EthanolWaterActivity.All.Select(model => model.Name)];
        Assert.All(PublishedTable.Rows("flash_point_model_regression.csv", 11), row =>
        {
            EthanolStrength strength = EthanolStrength.FromPercentVolume(row.Number("vol_pct_20C"));
            Near.Equal(row.Number("mass_pct"), strength.PercentMass, 0.0006);
            foreach (ActivityModel model in EthanolWaterActivity.All)
            {
                Near.Equal(row.Number($"T_flash_{model.Name}_C"), FlashPoint.OfEthanolWater(strength, model)!.Value, 0.0055);
            }

            var found = Assert.IsType<FlashPointResult.Estimated>(Of(strength));
            Near.Equal(row.Number("T_flash_UNIQUAC_C"), (double)found.Value.Degrees, 0.0055);
            Near.Equal(models.Min(name => row.Number($"T_flash_{name}_C")), (double)found.LowestOfModels!.Value.Degrees, 0.0055);
            Near.Equal(models.Max(name => row.Number($"T_flash_{name}_C")), (double)found.HighestOfModels!.Value.Degrees, 0.0055);
        });
    }

    [Fact]
    public void FlashPoint_BothReadingsOfThePercentage_EveryRow() => Assert.All(PublishedTable.Rows("flash_point_ethanol_water.csv", 7), row =>
    {
        double percent = row.Number("ethanol_pct_as_published");
        Assert.Contains((percent, row.Number("flash_point_published_C")), List);
        foreach (ActivityModel model in EthanolWaterActivity.All)
        {
            Near.Equal(row.Number($"{model.Name}_if_mass_pct"), FlashPoint.OfEthanolWater(EthanolStrength.FromPercentMass(percent), model)!.Value, 0.051);
            Near.Equal(row.Number($"{model.Name}_if_vol_pct"), FlashPoint.OfEthanolWater(EthanolStrength.FromPercentVolume(percent), model)!.Value, 0.051);
        }
    });

    [Fact]
    public void FlashPoint_DeviationsFromTheList_EveryRow() => Assert.All(PublishedTable.Rows("flash_point_ethanol_water_deviations.csv", 40), row =>
    {
        ActivityModel model = EthanolWaterActivity.All.Single(each => each.Name == row["model"]);
        double[] range = [.. row["range_pct"].Split('-').Select(double.Parse)];
        double[] deviations = [.. List.Where(each => each.Percent >= range[0] && each.Percent <= range[1]).Select(each => FlashPoint.OfEthanolWater(
            row["table_percent_read_as"] == "mass" ? EthanolStrength.FromPercentMass(each.Percent) : EthanolStrength.FromPercentVolume(each.Percent),
            model)!.Value - each.Celsius)];
        Near.Equal(row.Number("mean_dev_C"), deviations.Average(), 0.0055);
        Near.Equal(row.Number("mean_abs_dev_C"), deviations.Average(Math.Abs), 0.0055);
        Near.Equal(row.Number("max_abs_dev_C"), deviations.Max(Math.Abs), 0.0055);
    });

    [Fact]
    public void Activity_EveryRow() => Assert.All(PublishedTable.Rows("activity_coefficients_ethanol_water.csv", 25), row =>
    {
        ActivityModel model = EthanolWaterActivity.All.Single(each => each.Name == row["model"]);
        ActivityPair gamma = model.Of(row.Number("x_ethanol"), row.Number("T_K"));
        Near.Equal(row.Number("gamma_ethanol"), gamma.Ethanol, 0.000006);
        Near.Equal(row.Number("gamma_water"), gamma.Water, 0.000006);
    });

    /// <summary>Poling, Prausnitz and O'Connell, worked example: acetone in n-pentane, 307 K, x = 0.047: 4.99 and 1.005 (V).</summary>
    [Fact]
    public void Unifac_AcetoneInPentane_AsPublished()
    {
        var source = new Source("test", DataStatus.Derived);
        double[] gammas = Unifac.Gammas([Unifac.Read("CH3*1 CH3CO*1", source), Unifac.Read("CH3*2 CH2*3", source)], [0.047, 0.953], 307);
        Near.Equal(4.992, gammas[0], 0.0006);
        Near.Equal(1.0053, gammas[1], 0.00006);
    }

    /// <summary>Azeotrope at 101.325 kPa as worked elsewhere (D); literature about 0.89–0.90 and 351.3 K (M).</summary>
    [Theory]
    [InlineData("UNIQUAC", 0.879, 351.16)]
    [InlineData("NRTL", 0.882, 351.19)]
    [InlineData("Wilson", 0.875, 351.12)]
    [InlineData("vanLaar", 0.916, 351.31)]
    public void Activity_Azeotrope_WhereTheModelsPutIt(string name, double x, double kelvin)
    {
        ActivityModel model = EthanolWaterActivity.All.Single(each => each.Name == name);
        ActivityPair gamma = model.Of(x, kelvin);
        double ethanol = gamma.Ethanol * Substances.Ethanol.Antoine[0].Pascal(kelvin);
        double water = gamma.Water * Substances.Water.Antoine[0].Pascal(kelvin);
        Near.Equal(1, ethanol / water, 0.003);
        Near.Equal(1, ((x * ethanol) + ((1 - x) * water)) / Substance.StandardAtmosphere, 0.001);
    }

    /// <summary>Where the models set 23 °C: 58 % vol (UNIQUAC, NRTL), 52 (Wilson), 67 (van Laar), 71 (UNIFAC).</summary>
    [Theory]
    [InlineData("UNIQUAC", 58)]
    [InlineData("NRTL", 58)]
    [InlineData("Wilson", 52)]
    [InlineData("vanLaar", 67)]
    [InlineData("UNIFAC", 71)]
    public void FlashPoint_Of23_WhereTheModelsPutIt(string name, double percent)
    {
        ActivityModel model = EthanolWaterActivity.All.Single(each => each.Name == name);
        Assert.True(FlashPoint.OfEthanolWater(EthanolStrength.FromPercentVolume(percent - 1), model) > 23);
        Assert.True(FlashPoint.OfEthanolWater(EthanolStrength.FromPercentVolume(percent + 1), model) < 23);
    }

    /// <summary>Limits of the classes, on each side.</summary>
    [Theory]
    [InlineData(FlammableScheme.EuClp, 22.9, 35, "Flam. Liq. 1")]
    [InlineData(FlammableScheme.EuClp, 22.9, 35.1, "Flam. Liq. 2")]
    [InlineData(FlammableScheme.EuClp, 23, 78, "Flam. Liq. 3")]
    [InlineData(FlammableScheme.EuClp, 60, 78, "Flam. Liq. 3")]
    [InlineData(FlammableScheme.EuClp, 60.1, 78, "Not a flammable liquid")]
    [InlineData(FlammableScheme.UsOsha, 60, 78, "Flam. Liq. 3")]
    [InlineData(FlammableScheme.UsOsha, 60.1, 78, "Flam. Liq. 4")]
    [InlineData(FlammableScheme.UsOsha, 93, 200, "Flam. Liq. 4")]
    [InlineData(FlammableScheme.UsOsha, 93.1, 200, "Not a flammable liquid")]
    [InlineData(FlammableScheme.UsOsha, 10, 78, "Flam. Liq. 2")]
    [InlineData(FlammableScheme.Transport, 40, 35, "Packing group I")]
    [InlineData(FlammableScheme.Transport, 22.9, 78, "Packing group II")]
    [InlineData(FlammableScheme.Transport, 60, 78, "Packing group III")]
    [InlineData(FlammableScheme.Transport, 60.1, 78, "Not class 3")]
    public void Bands_OnEachSideOfALimit(FlammableScheme scheme, double flash, double boiling, string name) =>
        Assert.Equal(name, FlammableBands.Of(scheme, flash, boiling).Name);

    [Fact]
    public void Bands_EveryRow_HasItsStatementAndStatus() => Assert.All(
        PublishedTable.Rows("flammable_liquid_classes.csv", 9).Where(row => row["class"].StartsWith("Flam. Liq.", StringComparison.Ordinal)),
        row =>
        {
            double flash = row["class"][^1] switch { '1' or '2' => 0, '3' => 23, _ => 93 };
            FlammableScheme scheme = row["system"].Contains("OSHA", StringComparison.Ordinal) ? FlammableScheme.UsOsha : FlammableScheme.EuClp;
            FlammableBand band = FlammableBands.Of(scheme, flash, row["class"][^1] == '1' ? 35 : 36);
            Assert.Equal((row["class"], row["label"]), (band.Name, band.HStatement));
            Assert.Equal(row["status"] == "found" ? DataStatus.Read : DataStatus.Memory, band.Source.Status);
        });

    private static FlashPointResult Of(EthanolStrength strength) =>
        FlashPoint.Of(Mixture.Of([MixtureLine.OfAlcohol(Guid.CreateVersion7(), "alcohol", 1, strength)]));
}
