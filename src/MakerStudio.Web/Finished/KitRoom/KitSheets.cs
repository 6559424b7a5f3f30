using MakerStudio.Core.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Finished.KitRoom;

/// <summary>Kits as files: what each is made of, and those that were assembled.</summary>
internal static class KitSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/finished/kits/contents", "kits", async asked =>
            Contents.Of((await asked.Get<Kits>().ViewAsync(asked.Cancel)).Kits.SelectMany(PartsOf), asked.Zone));
        app.MapSheet("/finished/kits/assembled", "assembled kits", async asked =>
            Assembled(asked.Currency).Of((await asked.Get<Kits>().ViewAsync(asked.Cancel)).Lots.SelectMany(lot => lot.Contents.Select(c => (lot, c))), asked.Zone));
    }

    private static IEnumerable<KitPart> PartsOf(KitRow kit) =>
        kit.Items.Select(i => new KitPart(kit, i.Product.Name, "finished units", i.Count, i.Available)).Concat(kit.Parts.Select(p => new KitPart(kit, p.Name, "packaging", p.Count, p.Available)));

    private static readonly SheetOf<KitPart> Contents = new SheetOf<KitPart>()
        .Text("Kit", p => p.Kit.Name).Number("Possible now (each)", p => p.Kit.Possible).Text("Scarcest", p => p.Kit.Scarcest)
        .Text("Holds", p => p.Name).Text("Which is", p => p.Is).Number("In one kit (each)", p => p.Count).Number("Available (each)", p => p.Available);

    private static SheetOf<(KitLotRow Lot, KitContentRow Content)> Assembled(string currency) => new SheetOf<(KitLotRow Lot, KitContentRow Content)>()
        .Text("Kits", r => r.Lot.Code).Text("Kit", r => r.Lot.Name).Date("Made on", r => r.Lot.MadeOn).Number("Made (each)", r => r.Lot.Made).Number("Sold (each)", r => r.Lot.Sold)
        .Number("Taken apart (each)", r => r.Lot.Undone).Number("Left (each)", r => r.Lot.Left).Number($"Cost of one kit ({currency})", r => r.Lot.UnitCost)
        .Text("Holds", r => r.Content.Name).Text("Batch or lot", r => r.Content.Code).Text("Which is", r => r.Content.IsPackaging ? "packaging" : "finished units")
        .Number("In one kit (each)", r => r.Content.Count).Number($"Cost of one of them ({currency})", r => r.Content.UnitCost);

    private sealed record KitPart(KitRow Kit, string Name, string Is, int Count, long Available);
}
