using MakerStudio.Core.Assessing;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library.Workbench;

/// <summary>All that follows from a version as it stands; worked out once for each change of it.</summary>
/// <param name="Result">Null while the lines do not add up.</param>
public sealed record Consequences(VersionRow Version, Worked Worked, Assessment? Result)
{
    /// <param name="isBeingReleased">Whether advice that only matters at a release is asked for.</param>
    public static Consequences Of(FormulaSheet sheet, VersionRow version, bool isBeingReleased = false)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var worked = Worked.Of(sheet, version);
        return new(
            version, worked,
            Assessed.Of(sheet, version, worked) is { } formula ? Assessment.Of(formula, sheet.Choices, isBeingReleased) : null);
    }
}
