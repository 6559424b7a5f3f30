using MakerStudio.Core.Exchange;
using MakerStudio.Core.Rooms;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Library.Rooms;

/// <summary>A spray in a room as files; the figures are a model's and are written as it gives them.</summary>
internal static class RoomSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/library/{id:guid}/room", "in a room", async asked => await SprayAsync(asked) is { } spray ? Points(spray).Of(spray.Points, asked.Zone) : null);
        app.MapSheet("/library/{id:guid}/room/limits", "limits of the air", async asked => await SprayAsync(asked) is { } spray ? Limits.Of(spray.Air.Limits, asked.Zone) : null);
    }

    private static async Task<SprayInRoom?> SprayAsync(SheetAsked asked) =>
        await asked.Get<Formulas>().ReadAsync(asked.Id("id"), asked.Cancel) is { } sheet && sheet.Versions.FirstOrDefault(v => v.Number == asked.QueryNumber("v")) is { } version
            ? SprayTyped.Of(asked).In(sheet, version)
            : null;

    private static SheetOf<RoomPoint> Points(SprayInRoom spray) => new SheetOf<RoomPoint>()
        .Number("After (min)", p => Modelled(p.Minutes)).Number("In the room (mg/m³)", p => Modelled(p.Now)).Number("Mean since the spray (mg/m³)", p => Modelled(p.Mean))
        .Number("Of the lower explosive limit (%)", p => spray.LowerExplosive is { } lower ? Modelled(100 * p.Now / lower) : null);

    private static readonly SheetOf<LimitShare> Limits = new SheetOf<LimitShare>()
        .Text("Limit", l => l.Name).Number("Allows (mg/m³)", l => Modelled(l.MilligramsPerCubicMetre)).Number("Reached (%)", l => Modelled(100 * l.Share))
        .Text("From", l => l.Source.Citation).Text("How well it is known", l => l.Source.Caution);

    private static decimal? Modelled(double figure) => (decimal)figure;
}
