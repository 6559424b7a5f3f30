using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Services.Tests.Formulation;

public class VariantsTests
{
    private static readonly LineMaterial Oil = Material("Fig", MaterialKind.FragranceOil);
    private static readonly LineMaterial Dpg = Material("DPG", MaterialKind.Fixative);
    private static readonly LineMaterial Ethanol = Material("Ethanol", MaterialKind.Solvent);
    private static readonly LineMaterial Base = Material("DPM", MaterialKind.CarrierBase);
    private static readonly Dictionary<Guid, LineMaterial> All = new[] { Oil, Dpg, Ethanol, Base }.ToDictionary(m => m.Id);

    [Fact]
    public void WithoutFixative_WhereNothingIsTheRest_TheSolventTakesItsShare()
    {
        LineRow[] lines = [Line(Oil, 12), Line(Dpg, 5), Line(Ethanol, 83)];

        var tried = Variants.WithoutFixative(lines, All)!;

        Assert.Equal([12m, null], tried.Lines.Select(l => l.Amount));
        Assert.Null(Variants.WithoutFixative(tried.Lines, All));
    }

    [Fact]
    public void WithoutFixative_InParts_LeavesTheOthersAsTyped()
    {
        var tried = Variants.WithoutFixative([Line(Oil, 1, LineBasis.PartsByWeight), Line(Dpg, 0.5m, LineBasis.PartsByWeight), Line(Ethanol, 6, LineBasis.PartsByWeight)], All)!;

        Assert.Equal([1m, 6m], tried.Lines.Select(l => l.Amount));
    }

    [Fact]
    public void WithSolvent_ExchangesTheMainOneAndKeepsPlaceAndAmount()
    {
        LineRow[] lines = [Line(Oil, 12), Line(Ethanol, null), Line(Dpg, 5)];

        var tried = Variants.WithSolvent(lines, All, Base)!;

        Assert.Equal([Oil.Id, Base.Id, Dpg.Id], tried.Lines.Select(l => l.MaterialId));
        Assert.Equal([12m, null, 5m], tried.Lines.Select(l => l.Amount));
        Assert.Null(Variants.WithSolvent(tried.Lines, All, Base));
    }

    [Fact]
    public void TakenBack_AfterMoreWasTyped_KeepsTheRest()
    {
        LineRow[] lines = [Line(Oil, 12), Line(Dpg, 5), Line(Ethanol, 83)];
        var tried = Variants.WithoutFixative(lines, All)!;
        LineRow[] typedOn = [tried.Lines[0] with { Amount = 11 }, tried.Lines[1]];

        var back = tried.TakenBack(typedOn);

        Assert.Equal([11m, 5m, 83m], back.Select(l => l.Amount));
        Assert.Equal(lines.Select(l => l.LineId), back.Select(l => l.LineId));
    }

    private static LineRow Line(LineMaterial material, decimal? amount, LineBasis basis = LineBasis.PercentByWeight) =>
        new(Guid.CreateVersion7(), material.Id, amount, basis, null);

    private static LineMaterial Material(string name, MaterialKind kind) =>
        new(Guid.CreateVersion7(), name, kind, StockUnit.Gram, 0.9m, null, false, 0, 0, null, null, 0);
}
