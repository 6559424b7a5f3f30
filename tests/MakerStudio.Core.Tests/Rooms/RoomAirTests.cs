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
