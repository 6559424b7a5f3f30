using MakerStudio.Core.Materials;
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
}
