using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Rooms;

/// <summary>mg/m³ and ppm (by volume) of an ideal gas at 25 °C and 101.325 kPa.</summary>
public static class AirConcentration
{
    /// <param name="molarMass">g/mol.</param>
    public static double Ppm(double milligramsPerCubicMetre, double molarMass) => milligramsPerCubicMetre * MolarVolume.At25 / molarMass;

    public static double Milligrams(double ppm, double molarMass) => ppm * molarMass / MolarVolume.At25;

    /// <summary>% by volume is 10,000 ppm.</summary>
    public const double PpmPerPercent = 10_000;

    /// <summary>Most a pure liquid's vapour can come to at 25 °C, mg/m³: P·M/(R·T). Null where no vapour pressure is known.</summary>
    public static double? Saturated(Substance substance)
    {
        ArgumentNullException.ThrowIfNull(substance);
        const double kelvin = 25 + Antoine.ZeroCelsius;
        return substance.AntoineNear(kelvin) is { } antoine
            ? 1000 * antoine.Pascal(kelvin) * substance.MolarMass / (MolarVolume.GasConstant * kelvin)
            : null;
    }
}

/// <summary>A published limit beside a concentration.</summary>
/// <param name="Share">Concentration ÷ limit: 1 is at it.</param>
public sealed record LimitShare(string Name, double MilligramsPerCubicMetre, double Share, Source Source);

/// <summary>A substance in a room's air after a release, beside what is published about it.</summary>
/// <param name="Start">mg/m³ at once, the highest.</param>
/// <param name="Mean">mg/m³ over the time.</param>
/// <param name="End">mg/m³ at the end of it.</param>
/// <param name="OfLowerExplosive">Start ÷ lower explosive limit; null where no limit is known.</param>
/// <param name="IsCapped">More was released than the air can hold as vapour; the rest stays liquid.</param>
public sealed record RoomAir(
    double Start, double Mean, double End, double StartPpm, double? OfLowerExplosive, bool IsCapped,
    IReadOnlyList<LimitShare> Limits, IReadOnlyList<WorkingStep> Workings)
{
    /// <summary>To stand beside every figure of this kind.</summary>
    public const string Caution =
        "A screening estimate for the mean of the room: near the spray it is higher. Workplace limits are not limits for homes.";

    private const string Rule = "Room air";
    private const double MilligramsPerGram = 1000;

    private static readonly Source Model = new("single-zone mass balance, air fully mixed", DataStatus.Derived);

    /// <param name="grams">Of the substance, going into the air at once; 0 or more.</param>
    /// <param name="hours">0 or more.</param>
    public static RoomAir AfterSpray(Room room, Substance substance, double grams, double hours)
    {
        ArgumentNullException.ThrowIfNull(room);
        ArgumentNullException.ThrowIfNull(substance);
        double most = AirConcentration.Saturated(substance) ?? double.PositiveInfinity;
        double free = WellMixedRoom.AfterRelease(room, MilligramsPerGram * grams, 0);
        double milligrams = MilligramsPerGram * grams * (free > most ? most / free : 1);
        double start = WellMixedRoom.AfterRelease(room, milligrams, 0);
        double mean = WellMixedRoom.MeanAfterRelease(room, milligrams, hours);
        double end = WellMixedRoom.AfterRelease(room, milligrams, hours);
        double? explosive = substance.ExplosiveLimits?.Value.LowerPercent * AirConcentration.PpmPerPercent is { } ppm
            ? start / AirConcentration.Milligrams(ppm, substance.MolarMass)
            : null;
        var workings = new List<WorkingStep>
        {
            new(Rule, $"{grams:0.###} g of {substance.Name} in {room.CubicMetres:0.#} m³ is {free:0.0} mg/m³ at once; with {room.ChangesPerHour:0.##} air changes an hour {mean:0.0} mg/m³ on average over {hours:0.##} h, {end:0.0} mg/m³ at the end.", Model),
        };
        if (explosive is { } share)
        {
            workings.Add(new(Rule, $"The lower explosive limit is {substance.ExplosiveLimits!.Value.LowerPercent:0.##} % by volume; the start is {100 * share:0.###} % of it.", substance.ExplosiveLimits.Source));
        }

        return new(
            start, mean, end, AirConcentration.Ppm(start, substance.MolarMass), explosive, free > most,
            [.. ExposureLimits.For(substance.Cas).Select(limit => Beside(limit, mean, start, substance.MolarMass))], workings);
    }

    /// <summary>A limit over minutes, or one of danger, stands beside the start, the cautious reading; one over a working day beside the mean.</summary>
    private static LimitShare Beside(ExposureLimit limit, double mean, double start, double molarMass)
    {
        double milligrams = limit.InMilligrams(molarMass);
        bool isLong = limit.Over is "8 h" or "10 h";
        return new($"{limit.Name}, {limit.Over}", milligrams, (isLong ? mean : start) / milligrams, limit.Source);
    }
}
