using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

/// <param name="MassFraction">Share by weight, 0 or more.</param>
/// <param name="Density">Null where it is not known.</param>
public sealed record MixturePart(decimal MassFraction, Density? Density);

public static class MixtureDensity
{
    /// <summary>
    /// Estimate that takes volumes as additive (ideal mixing): ρ = Σw ÷ Σ(w/ρ). Alcohol and water shrink on mixing,
    /// so for them it reads too low, by 3 to 4 % near half and half; weigh a known volume instead.
    /// Null where a part with mass has no density, or there is no mass.
    /// </summary>
    public static Density? ByVolumeAddition(IReadOnlyList<MixturePart> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        MixturePart[] present = parts.Where(part => part.MassFraction > 0).ToArray();
        if (present.Length == 0 || present.Any(part => part.Density is null))
        {
            return null;
        }

        decimal volume = present.Sum(part => part.MassFraction / part.Density!.Value.GramsPerMillilitre);
        decimal density = present.Sum(part => part.MassFraction) / volume;
        // The last digit of a division may step outside the parts' own range; a mixture's density never does.
        decimal lowest = present.Min(part => part.Density!.Value.GramsPerMillilitre);
        decimal highest = present.Max(part => part.Density!.Value.GramsPerMillilitre);
        return new Density(Math.Clamp(density, lowest, highest));
    }
}
