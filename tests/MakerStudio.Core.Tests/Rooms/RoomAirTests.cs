using MakerStudio.Core.Materials;
using MakerStudio.Core.Rooms;

namespace MakerStudio.Core.Tests.Rooms;

public class RoomAirTests
{
    private static readonly Room Living = new(58, 0.5);

    [Fact]
    public void AfterSpray_OneGramOfEthanol_BesideItsLimits()
    {
        RoomAir air = RoomAir.AfterSpray(Living, Substances.Ethanol, 1, 8);
        Assert.Equal(1000 / 58.0, air.Start, 9);
        // 3.1 % by volume is 58.4 g/m³.
        Assert.InRange(air.OfLowerExplosive!.Value, 0.00029, 0.0003);
        LimitShare osha = Assert.Single(air.Limits, limit => limit.Name.StartsWith("OSHA", StringComparison.Ordinal));
        Assert.Equal(air.Mean / osha.MilligramsPerCubicMetre, osha.Share, 9);
        LimitShare stel = Assert.Single(air.Limits, limit => limit.Name.StartsWith("ACGIH", StringComparison.Ordinal));
        Assert.Equal(air.Start / stel.MilligramsPerCubicMetre, stel.Share, 9);
        Assert.NotNull(stel.Source.Caution);
        LimitShare tenHours = Assert.Single(air.Limits, limit => limit.Name == "NIOSH REL, 10 h");
        Assert.Equal(air.Mean / tenHours.MilligramsPerCubicMetre, tenHours.Share, 9);
        LimitShare danger = Assert.Single(air.Limits, limit => limit.Name.StartsWith("NIOSH IDLH", StringComparison.Ordinal));
        Assert.Equal(air.Start / danger.MilligramsPerCubicMetre, danger.Share, 9);
        Assert.False(air.IsCapped);
    }

    [Fact]
    public void AfterSpray_MoreThanTheAirHolds_IsCappedAtSaturation()
    {
        RoomAir air = RoomAir.AfterSpray(new Room(1, 0), Substances.Find(CasNumber.Of("56-81-5"))!, 10, 1);
        Assert.True(air.IsCapped);
        Assert.Equal(AirConcentration.Saturated(Substances.Find(CasNumber.Of("56-81-5"))!)!.Value, air.Start, 9);
        Assert.Null(air.OfLowerExplosive);
    }

    /// <summary>Ethanol saturates air of 25 °C at 7.88 kPa, some 146 g/m³.</summary>
    [Theory]
    [InlineData(0.999, false)]
    [InlineData(1.001, true)]
    public void AfterSpray_JustBelowAndAboveSaturation_IsCappedFromThere(double ofSaturation, bool isCapped)
    {
        double saturated = AirConcentration.Saturated(Substances.Ethanol)!.Value;
        Assert.InRange(saturated, 145_000, 148_000);
        RoomAir air = RoomAir.AfterSpray(new Room(1, 0.5), Substances.Ethanol, ofSaturation * saturated / 1000, 2);
        Assert.Equal(isCapped, air.IsCapped);
        Assert.Equal(Math.Min(1, ofSaturation) * saturated, air.Start, 6);
        Assert.Equal(air.Start * Math.Exp(-1), air.End, 6);
    }

    /// <summary>(1 − e^−x)/x and (1 − that)/x, on both sides of where the series takes over, x = 0.0001.</summary>
    [Theory]
    [InlineData(0.00009, 0.99995500135, 0.49998500034)]
    [InlineData(0.00011, 0.99994500202, 0.49998166717)]
    [InlineData(0.2, 0.90634623461, 0.46826882695)]
    public void Room_FewAirChanges_MeanIsThatOfTheExponential(double changes, double afterRelease, double withSource)
    {
        var room = new Room(1, changes);
        Assert.Equal(afterRelease, WellMixedRoom.MeanAfterRelease(room, 1, 1), 9);
        Assert.Equal(afterRelease, WellMixedRoom.WithSource(room, 1, 1), 9);
        Assert.Equal(withSource, WellMixedRoom.MeanWithSource(room, 1, 1), 8);
    }

    [Fact]
    public void Room_WithoutAirChanges_OnlyGathers()
    {
        var closed = new Room(20, 0);
        Assert.Equal(50, WellMixedRoom.AfterRelease(closed, 1000, 5), 9);
        Assert.Equal(25, WellMixedRoom.WithSource(closed, 100, 5), 9);
        Assert.Equal(12.5, WellMixedRoom.MeanWithSource(closed, 100, 5), 9);
        Assert.Equal(double.PositiveInfinity, WellMixedRoom.Steady(closed, 100));
    }

    [Fact]
    public void Room_SourceStopped_DecaysFromThere()
    {
        double atStop = WellMixedRoom.WithSource(Living, 100, 3);
        Assert.Equal(atStop * Math.Exp(-1), WellMixedRoom.AfterStop(Living, atStop, 2), 12);
        Assert.Equal(WellMixedRoom.Steady(Living, 100), WellMixedRoom.WithSource(Living, 100, 200), 9);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-1, 1)]
    [InlineData(10, -0.1)]
    [InlineData(double.NaN, 1)]
    [InlineData(10, double.PositiveInfinity)]
    public void Room_Impossible_IsRefused(double cubicMetres, double changes) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Room(cubicMetres, changes));
}
