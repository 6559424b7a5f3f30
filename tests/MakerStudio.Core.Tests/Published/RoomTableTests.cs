using MakerStudio.Core.Materials;
using MakerStudio.Core.Rooms;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Single-zone mass balance (the form of RIVM Report 2017-0197), worked elsewhere. Data/README.md.</summary>
public class RoomTableTests
{
    [Fact]
    public void Room_EveryExample() => Assert.All(PublishedTable.Rows("room_model_examples.csv", 8), row =>
    {
        var room = new Room(row.Number("V_m3"), row.Number("air_changes_per_h"));
        (double amount, double hours) = (row.Number("mass_or_rate"), row.Number("t_h"));
        bool atOnce = row["release"] == "instantaneous";
        double end = atOnce ? WellMixedRoom.AfterRelease(room, amount, hours) : WellMixedRoom.WithSource(room, amount, hours);
        double mean = atOnce ? WellMixedRoom.MeanAfterRelease(room, amount, hours) : WellMixedRoom.MeanWithSource(room, amount, hours);
        Near.Equal(row.Number("C_mg_m3_at_t"), end, 0.000051);
        Near.Equal(row.Number("mean_C_mg_m3_0_to_t"), mean, 0.000051);
        Near.Equal(row.Number("C_as_ppm_ethanol_25C"), AirConcentration.Ppm(end, Substances.Ethanol.MolarMass), 0.0003);
    });

    [Fact]
    public void RoomKinds_CarryTheirStatus()
    {
        Assert.Equal(8, RoomKinds.All.Count);
        Assert.All(RoomKinds.All, kind => Assert.NotNull(kind.Source.Caution));
        Assert.Contains(RoomKinds.All, kind => kind is { Name: "Living room", Room: { CubicMetres: 58, ChangesPerHour: 0.5 } });
    }
}
