using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Rooms;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library.Rooms;

/// <summary>A point of the curve.</summary>
/// <param name="Minutes">Since the spray.</param>
/// <param name="Now">mg/m³ at that moment.</param>
/// <param name="Mean">mg/m³ from the spray until then.</param>
public sealed record RoomPoint(double Minutes, double Now, double Mean);

/// <summary>Ethanol in a room's air after a spray, worked out as it is typed. Pure.</summary>
/// <param name="EthanolGrams">Gone into the air.</param>
/// <param name="Points">For the table.</param>
public sealed record SprayInRoom(double EthanolGrams, Room Room, RoomAir Air, IReadOnlyList<RoomPoint> Points)
{
    /// <summary>Moments of the table, minutes; own choice, the last is the time a short-term limit is averaged over doubled and more.</summary>
    public static readonly IReadOnlyList<int> Moments = [0, 5, 15, 30, 60, 120, 480];

    private const double MilligramsPerGram = 1000;
    private const double MinutesPerHour = 60;

    /// <summary>The share of ethanol by weight in a version, and its density; null while its lines do not add up.</summary>
    public static (double Ethanol, Density? Density)? MixtureOf(FormulaSheet sheet, VersionRow version)
    {
        if (Assessed.Of(sheet, version) is not { } formula)
        {
            return null;
        }

        var mixture = FormulaMixture.Of(formula);
        return (mixture.Ethanol, MixtureVolume.Of(mixture, new Celsius(20), formula.Measured.Density) is DensityResult.Known known ? known.Density : null);
    }

    /// <param name="ethanol">Share by weight of what is sprayed, 0 to 1.</param>
    /// <param name="hours">What limits of a working day are compared over.</param>
    public static SprayInRoom Of(double ethanol, Density density, decimal millilitres, Room room, double hours)
    {
        var grams = ethanol * (double)density.MassOf(Volume.FromMillilitres(millilitres)).Grams;
        var air = RoomAir.AfterSpray(room, Substances.Ethanol, grams, hours);
        // What the air cannot hold stays liquid: the curve starts where the air does.
        var milligrams = air.Start * room.CubicMetres;
        return new(grams, room, air, [.. Moments.Select(minutes => new RoomPoint(
            minutes, WellMixedRoom.AfterRelease(room, milligrams, minutes / MinutesPerHour), WellMixedRoom.MeanAfterRelease(room, milligrams, minutes / MinutesPerHour)))]);
    }

    /// <summary>mg/m³ at any moment of the curve.</summary>
    public double At(double minutes) => WellMixedRoom.AfterRelease(Room, Air.Start * Room.CubicMetres, minutes / MinutesPerHour);

    /// <summary>The lower explosive limit, mg/m³; null where none is known.</summary>
    public double? LowerExplosive => Air.OfLowerExplosive is { } share && share > 0 ? Air.Start / share : null;

    public static double Grams(double milligramsPerCubicMetre) => milligramsPerCubicMetre / MilligramsPerGram;
}
