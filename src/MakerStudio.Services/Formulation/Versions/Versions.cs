namespace MakerStudio.Services.Formulation;

/// <summary>Versions, drafts and release: one file a use case in this folder.</summary>
public sealed partial class Versions(StudioStore store)
{
    /// <summary>Lines of one formula; own bound.</summary>
    public const int MostLines = 100;

    /// <summary>Hours in the longest rest that is believed to be meant: two years; own bound.</summary>
    public const int LongestRestHours = 2 * 366 * 24;
}
