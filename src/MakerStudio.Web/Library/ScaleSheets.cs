using System.Globalization;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Library;

/// <summary>A version scaled to a wish, as a file.</summary>
internal static class ScaleSheets
{
    public static void Map(IEndpointRouteBuilder app) => app.MapSheet("/library/scaled", "scaled", async asked =>
        await asked.Get<Versions>().ScaleAsync(WishOf(asked), asked.Cancel) is Done<ScaleSheet> { Value: var sheet } ? Scaled(asked.Currency).Of(LinesOf(sheet), asked.Zone) : null);

    /// <summary>To stand behind the address, so that the file shows what the page shows.</summary>
    public static string QueryOf(ScaleWish wish) => QueryString.Create(
        new (string Name, object? Value)[] { ("version", wish.VersionId), ("by", wish.By), ("size", wish.SizeId), ("bottles", wish.Bottles), ("grams", wish.Grams), ("lot", wish.LotId) }
            .Where(w => w.Value is not null).Select(w => KeyValuePair.Create(w.Name, (string?)string.Format(CultureInfo.InvariantCulture, "{0}", w.Value)))).ToString();

    private static ScaleWish WishOf(SheetAsked asked) => new()
    {
        VersionId = asked.QueryId("version") ?? default, By = Enum.TryParse<ScaleBy>(asked.Query("by"), out var by) ? by : default, SizeId = asked.QueryId("size"),
        Bottles = (int?)asked.QueryNumber("bottles"), Grams = asked.QueryNumber("grams"), LotId = asked.QueryId("lot"),
    };

    private static IEnumerable<ScaleLine> LinesOf(ScaleSheet sheet) =>
    [
        .. sheet.Lines.Select((l, i) => new ScaleLine(i + 1, l.Material, l.Percent, l.Target.Milligrams, l.Missing.Milligrams, l.Cost)),
        .. sheet.Parts.Select(p => new ScaleLine(null, p.Material, null, p.Needed, p.Missing, null)),
    ];

    private static SheetOf<ScaleLine> Scaled(string currency) => new SheetOf<ScaleLine>()
        .Number("Add", l => l.Add).Text("Material", l => l.Material.Name).Text("First lot", l => l.Material.FirstLot).Number("Share (% w/w)", l => l.Percent)
        .Number("Target (g or each)", l => Shown(l.Target, l.Material.StockedIn)).Text("Stocked in", l => Written.Unit(l.Material.StockedIn))
        .Number("On hand (g or each)", l => Shown(l.Material.OnHand, l.Material.StockedIn)).Number("Available (g or each)", l => Shown(l.Material.Available, l.Material.StockedIn))
        .Number("Short (g or each)", l => Shown(l.Missing, l.Material.StockedIn)).Number($"Cost ({currency})", l => l.Cost);

    /// <param name="Add">Order of addition; null for packaging.</param>
    /// <param name="Target">Milligrams or pieces, like <paramref name="Missing"/>.</param>
    private sealed record ScaleLine(int? Add, LineMaterial Material, decimal? Percent, long Target, long Missing, decimal? Cost);
}
