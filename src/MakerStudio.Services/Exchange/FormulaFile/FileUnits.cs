namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>A kind of quantity in the file: the UCUM codes it may bear, each with its factor to the unit kept, and its range there.</summary>
/// <param name="Units">The first is the one written.</param>
internal sealed record FileUnits(IReadOnlyList<(string Ucum, decimal Factor)> Units, decimal Least, decimal Most)
{
    private const decimal Thousand = 1000m;

    internal static FileUnits Percent { get; } = new([("%", 1m)], 0m, 100m);

    internal static FileUnits Density { get; } = new(
        [("g/mL", 1m), ("kg/L", 1m), ("kg/m3", 1 / Thousand)], Core.Quantities.Density.Lowest, Core.Quantities.Density.Highest);

    /// <summary>From far below any flash point to far above.</summary>
    internal static FileUnits Temperature { get; } = new([("Cel", 1m)], -273.15m, 2000m);

    internal static FileUnits Volume { get; } = new([("mL", 1m), ("L", Thousand)], 0.001m, 1_000_000m);

    internal static FileUnits Viscosity { get; } = new([("mm2/s", 1m), ("cSt", 1m)], 0.001m, 1_000_000m);

    internal static FileUnits Ph { get; } = new([("[pH]", 1m)], 0m, 14m);

    internal static FileUnits DropMass { get; } = new([("mg", 1m)], 0.1m, 1000m);

    internal static FileUnits ByBodyWeight { get; } = new([("mg/kg", 1m)], 0.000001m, 1_000_000m);

    internal static FileUnits InAir { get; } = new([("mg/L", 1m)], 0.000001m, 1_000_000m);

    /// <summary><c>{ "value": 0.815, "unit": "g/mL" }</c> in the unit kept; null where it is left out or faulty.</summary>
    internal decimal? Read(JsonPlace? place)
    {
        if (place?.Fields("value", "unit") is not { } fields)
        {
            return null;
        }

        var factor = Factor(fields.Needed("unit"));
        var number = fields.Needed("value")?.Number(Least / (factor ?? 1m), Most / (factor ?? 1m));
        return number * factor;
    }

    /// <summary>Factor of the unit that stands in the field.</summary>
    internal decimal? Factor(JsonPlace? place)
    {
        if (place?.Text() is not { } unit)
        {
            return null;
        }

        foreach (var (ucum, factor) in Units)
        {
            if (ucum == unit)
            {
                return factor;
            }
        }

        place.Value.Fault<string>($"{place.Value.Shown()} is not a unit this quantity is read in. Write {string.Join(" or ", Units.Select(each => each.Ucum))} (UCUM codes).");
        return null;
    }
}
