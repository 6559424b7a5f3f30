using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Rooms;

/// <summary>A room with clean air coming in: volume in m³ above 0, air changes per hour 0 or more.</summary>
public sealed record Room
{
    /// <exception cref="ArgumentOutOfRangeException">No volume, or less than no air.</exception>
    public Room(double cubicMetres, double changesPerHour)
    {
        if (!(cubicMetres > 0 && double.IsFinite(cubicMetres)) || !(changesPerHour >= 0 && double.IsFinite(changesPerHour)))
        {
            throw new ArgumentOutOfRangeException(nameof(cubicMetres), "A room has a volume above zero, and air changes of zero or more.");
        }

        CubicMetres = cubicMetres;
        ChangesPerHour = changesPerHour;
    }

    public double CubicMetres { get; }

    public double ChangesPerHour { get; }
}

/// <summary>A kind of room to start from.</summary>
public sealed record RoomKind(string Name, Room Room, Source Source);

public static class RoomKinds
{
    public static IReadOnlyList<RoomKind> All { get; } =
    [
        .. DataTable.Read("rooms.csv").Select(row => new RoomKind(
            row.Text("name"), new(row.Number("volume_m3"), row.Number("changes_per_hour")), row.Source())),
    ];
}

/// <summary>
/// Concentration in a room whose air is mixed all the time, V·dC/dt = E − k·V·C, nothing sticking to walls. mg, m³, h.
/// Near the source, and in the first minutes after a spray, the true concentration is higher than the mean of the room.
/// A screening estimate, not a proof of safety.
/// </summary>
public static class WellMixedRoom
{
    /// <summary>mg/m³ at a time after a mass went into the air at once.</summary>
    /// <param name="milligrams">0 or more.</param>
    /// <param name="hours">0 or more.</param>
    public static double AfterRelease(Room room, double milligrams, double hours)
    {
        Check(room, milligrams, hours);
        return milligrams / room.CubicMetres * Math.Exp(-room.ChangesPerHour * hours);
    }

    /// <summary>Mean over the time since, mg/m³.</summary>
    public static double MeanAfterRelease(Room room, double milligrams, double hours)
    {
        Check(room, milligrams, hours);
        return milligrams / room.CubicMetres * MeanDecay(room.ChangesPerHour * hours);
    }

    /// <summary>mg/m³ at a time after a steady source began.</summary>
    /// <param name="milligramsPerHour">0 or more.</param>
    public static double WithSource(Room room, double milligramsPerHour, double hours)
    {
        Check(room, milligramsPerHour, hours);
        return milligramsPerHour * hours / room.CubicMetres * MeanDecay(room.ChangesPerHour * hours);
    }

    /// <summary>Mean over the time since, mg/m³.</summary>
    public static double MeanWithSource(Room room, double milligramsPerHour, double hours)
    {
        Check(room, milligramsPerHour, hours);
        double kt = room.ChangesPerHour * hours;
        // (1 − (1 − e^−kt)/kt)/kt, by its series where the difference would lose its digits.
        double share = kt < SmallExponent ? 0.5 - (kt / 6) + (kt * kt / 24) : (1 - MeanDecay(kt)) / kt;
        return milligramsPerHour * hours / room.CubicMetres * share;
    }

    /// <summary>What a steady source comes to in the end, mg/m³; infinite without air changes.</summary>
    public static double Steady(Room room, double milligramsPerHour)
    {
        Check(room, milligramsPerHour, 0);
        return milligramsPerHour / (room.ChangesPerHour * room.CubicMetres);
    }

    /// <summary>mg/m³ after a source has stopped.</summary>
    /// <param name="atStop">mg/m³ when it stopped.</param>
    /// <param name="hours">Since it stopped.</param>
    public static double AfterStop(Room room, double atStop, double hours)
    {
        Check(room, atStop, hours);
        return atStop * Math.Exp(-room.ChangesPerHour * hours);
    }

    private const double SmallExponent = 1e-4;

    /// <summary>(1 − e^−x)/x, 1 at x = 0.</summary>
    private static double MeanDecay(double x) => x < SmallExponent ? 1 - (x / 2) + (x * x / 6) : (1 - Math.Exp(-x)) / x;

    private static void Check(Room room, double amount, double hours)
    {
        ArgumentNullException.ThrowIfNull(room);
        if (!(amount >= 0 && hours >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(amount), "An amount and a time are 0 or more.");
        }
    }
}
