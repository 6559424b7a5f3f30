using System.Globalization;
using MakerStudio.Core.Rooms;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Library.Rooms;

/// <summary>A spray and its room as they are typed; null where a field is empty.</summary>
/// <param name="PerSpray">mL.</param>
/// <param name="Volume">m³.</param>
/// <param name="Changes">Air changes an hour.</param>
internal sealed record SprayTyped(decimal? Sprays, decimal? PerSpray, decimal? Volume, decimal? Changes)
{
    private const double WorkingDay = 8;

    /// <summary>Null while a field is missing, the version does not add up, or it holds no ethanol.</summary>
    public SprayInRoom? In(FormulaSheet sheet, VersionRow version) =>
        SprayInRoom.MixtureOf(sheet, version) is { Ethanol: > 0, Density: { } density } mixture && this is { Sprays: { } sprays, PerSpray: { } each, Volume: > 0, Changes: >= 0 }
            ? SprayInRoom.Of(mixture.Ethanol, density, sprays * each, new Room((double)Volume.Value, (double)Changes.Value), WorkingDay)
            : null;

    /// <summary>To stand behind an address, so that the file shows what the page shows.</summary>
    public string Query(int version) => string.Create(
        CultureInfo.InvariantCulture, $"?v={version}&sprays={Sprays}&each={PerSpray}&volume={Volume}&changes={Changes}");

    public static SprayTyped Of(SheetAsked asked) => new(asked.QueryNumber("sprays"), asked.QueryNumber("each"), asked.QueryNumber("volume"), asked.QueryNumber("changes"));
}
