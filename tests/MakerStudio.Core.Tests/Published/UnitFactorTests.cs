using System.Globalization;
using MakerStudio.Core.Quantities;
using UnitsNet.Units;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Factors against NIST Handbook 44 App. C and SP 811 (Data/units_exact.md), and every pair against UnitsNet.</summary>
public class UnitFactorTests
{
    // UnitsNet counts in doubles.
    private const double DoubleCloseness = 1e-9;

    [Theory]
    [InlineData("avoirdupois pound", AmountUnit.Pound, 1)]
    [InlineData("avoirdupois ounce", AmountUnit.OunceWeight, 1)]
    [InlineData("US fluid ounce", AmountUnit.FluidOunceUs, 1)]
    [InlineData("US gallon", AmountUnit.FluidOunceUs, 128)]
    [InlineData("imperial gallon", AmountUnit.FluidOunceImperial, 160)]
    public void Factor_EqualsTheNistTable(string row, AmountUnit unit, int many)
    {
        (decimal value, string measuredIn) = Table()[row];
        decimal inOurs = measuredIn == "L" ? value * 1000m : value;
        Assert.Equal(inOurs, AmountUnits.Factor(unit) * many);
    }

    /// <summary>NIST SP 811: t/°C = (t/°F − 32)/1.8, so 60 °F is 15.5555556 °C; and 0 K is −273.15 °C.</summary>
    [Fact]
    public void Fahrenheit_Sixty_IsTheProofTemperature()
    {
        Assert.Equal(15.5555556m, decimal.Round(Celsius.FromFahrenheit(60).Degrees, 7));
        Assert.False(new Celsius(-273.16m).IsPossible);
        Assert.True(new Celsius(-273.15m).IsPossible);
    }

    public static TheoryData<AmountUnit, AmountUnit> Pairs
    {
        get
        {
            var pairs = new TheoryData<AmountUnit, AmountUnit>();
            foreach (AmountUnit from in Oracle.Keys)
            {
                foreach (AmountUnit to in Oracle.Keys.Where(to => AmountUnits.IsMass(to) == AmountUnits.IsMass(from)))
                {
                    pairs.Add(from, to);
                }
            }

            return pairs;
        }
    }

    private static Dictionary<AmountUnit, Enum> Oracle { get; } = new()
    {
        [AmountUnit.Kilogram] = MassUnit.Kilogram,
        [AmountUnit.Gram] = MassUnit.Gram,
        [AmountUnit.Milligram] = MassUnit.Milligram,
        [AmountUnit.Pound] = MassUnit.Pound,
        [AmountUnit.OunceWeight] = MassUnit.Ounce,
        [AmountUnit.Litre] = VolumeUnit.Liter,
        [AmountUnit.Millilitre] = VolumeUnit.Milliliter,
        [AmountUnit.FluidOunceUs] = VolumeUnit.UsOunce,
        [AmountUnit.FluidOunceImperial] = VolumeUnit.ImperialOunce,
    };

    [Fact]
    public void Oracle_CoversEveryMeasure() =>
        Assert.Equal(AmountUnits.All.Where(unit => !AmountUnits.IsCount(unit)).Order(), Oracle.Keys.Order());

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Convert_EveryPair_AgreesWithUnitsNet(AmountUnit from, AmountUnit to)
    {
        const decimal quantity = 12.5m;
        decimal ours = quantity * AmountUnits.Factor(from) / AmountUnits.Factor(to);
        double theirs = (double)UnitsNet.UnitConverter.Convert((double)quantity, Oracle[from], Oracle[to]);
        Assert.InRange((double)ours / theirs, 1 - DoubleCloseness, 1 + DoubleCloseness);
    }

    [Theory]
    [InlineData(AmountUnit.Litre)]
    [InlineData(AmountUnit.Millilitre)]
    [InlineData(AmountUnit.FluidOunceUs)]
    [InlineData(AmountUnit.FluidOunceImperial)]
    public void ToStock_VolumeAtADensity_AgreesWithUnitsNet(AmountUnit unit)
    {
        UnitsNet.Mass theirs = UnitsNet.Volume.From(25, (VolumeUnit)Oracle[unit]) * UnitsNet.Density.FromGramsPerMilliliter(0.79);
        var ours = Assert.IsType<ConversionResult.Converted>(
            AmountConversion.ToStock(25, unit, StockUnit.Gram, new Density(0.79m)));
        Assert.InRange((double)ours.Exact / theirs.Grams, 1 - DoubleCloseness, 1 + DoubleCloseness);
    }

    private static Dictionary<string, (decimal Value, string In)> Table() => File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", "Data", "units_exact.csv"))
        .Skip(1)
        .Select(line => line.Split(','))
        .Where(cells => decimal.TryParse(cells[3], NumberStyles.Float, CultureInfo.InvariantCulture, out _))
        .ToDictionary(
            cells => cells[0], cells => (decimal.Parse(cells[3], NumberStyles.Float, CultureInfo.InvariantCulture), cells[2]));
}
