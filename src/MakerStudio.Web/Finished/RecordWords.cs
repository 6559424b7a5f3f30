using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Parts;

namespace MakerStudio.Web.Finished;

/// <summary>How the states of a batch are drawn.</summary>
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
}
