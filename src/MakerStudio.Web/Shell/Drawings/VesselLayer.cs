namespace MakerStudio.Web.Shell.Drawings;

/// <summary>What lies in a vessel, from the bottom up.</summary>
/// <param name="Grams">0 or more.</param>
public sealed record VesselLayer(Series Series, decimal Grams);
