using MakerStudio.Core.Quantities;
using MakerStudio.Core.Rooms;
using MakerStudio.Web.Library.Rooms;

namespace MakerStudio.Web.Tests.Library;

public class SprayInRoomTests
{
    /// <summary>1 mL at 0.8 g/mL is 0.8 g; in 40 m³ that is 20 mg/m³, and 20/e after one air change. Single-zone mass balance.</summary>
    [Fact]
    public void Of_OneMillilitre_FallsByOneEthAfterOneAirChange()
    {
        var spray = SprayInRoom.Of(1, new Density(0.8m), 1m, new Room(40, 1), 8);

        Assert.Equal(0.8, spray.EthanolGrams, 9);
        Assert.Equal(20, spray.Points.Single(p => p.Minutes == 0).Now, 9);
        Assert.Equal(20 / Math.E, spray.Points.Single(p => p.Minutes == 60).Now, 9);
        Assert.Equal(20 * (1 - (1 / Math.E)), spray.Points.Single(p => p.Minutes == 60).Mean, 9);
        Assert.Equal(spray.Points.Single(p => p.Minutes == 30).Now, spray.At(30), 9);
    }

    [Fact]
    public void Of_MoreThanTheAirHolds_StartsSaturated()
    {
        var spray = SprayInRoom.Of(1, new Density(0.8m), 10_000m, new Room(1, 0), 8);

        Assert.True(spray.Air.IsCapped);
        Assert.Equal(spray.Air.Start, spray.At(120), 6);
        Assert.True(spray.Points[0].Now > spray.LowerExplosive);
    }
}
