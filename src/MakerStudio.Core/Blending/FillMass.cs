using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

public static class FillMass
{
    /// <summary>What to weigh into one bottle: nominal volume × density + overfill, to the nearest milligram.</summary>
    public static Mass Of(Volume nominal, Density density, Mass overfill) => density.MassOf(nominal) + overfill;
}
