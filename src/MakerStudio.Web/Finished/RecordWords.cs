using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Drawings;
using MakerStudio.Web.Shell.Parts;

namespace MakerStudio.Web.Finished;

/// <summary>States, units and hatches of a batch record.</summary>
public static class RecordWords
{
    public static StatusKind StatusOf(BatchState state) => state switch
    {
        BatchState.Planned => StatusKind.Planned,
        BatchState.Weighing => StatusKind.Weighing,
        BatchState.Resting => StatusKind.Resting,
        BatchState.Ready => StatusKind.Ready,
        BatchState.Filled => StatusKind.Filled,
        BatchState.Closed => StatusKind.Closed,
        _ => StatusKind.Discarded,
    };

    public static Series SeriesOf(MaterialKind kind) => kind switch
    {
        MaterialKind.FragranceOil or MaterialKind.EssentialOil or MaterialKind.PreBlend => Series.Fragrance,
        MaterialKind.Solvent or MaterialKind.CarrierBase or MaterialKind.Water or MaterialKind.Wax or MaterialKind.DryBotanical => Series.Ethanol,
        MaterialKind.Fixative or MaterialKind.Solubiliser or MaterialKind.Preservative or MaterialKind.Colourant => Series.Fixative,
        _ => Series.Packaging,
    };

    /// <summary>"1 bottle", "46 bottles", with the size when there is one: "46 bottles of 100 mL".</summary>
    public static string Units(int count, string productKind, string? size = null)
    {
        var word = ProductKinds.Get(productKind).ContainerWord;
        return $"{Shell.Written.Count(count)} {word}{(count == 1 ? "" : "s")}{(size is null ? "" : $" of {size}")}";
    }
}
