using MakerStudio.Core.FlashPoints;
using FlashPointValue = MakerStudio.Core.Hazards.FlashPointValue;

namespace MakerStudio.Core.Assessing;

/// <summary>The flash point as the rule of flammable liquids takes it.</summary>
internal static class FlashForHazards
{
    /// <summary>Null where none is known: the most flammable ingredient then stands in.</summary>
    internal static FlashPointValue? Of(FlashPointResult? result) => result switch
    {
        FlashPointResult.Measured measured => new(measured.Value.Degrees, IsMeasured: true),
        FlashPointResult.Estimated estimated => new(estimated.Value.Degrees, IsMeasured: false, (decimal)FlashDecisions.ReachOf(estimated.Error.Largest)),
        // Nothing in it burns at all: there is no limit to stay clear of.
        FlashPointResult.NoneFound { LeftOut: [] } none => new(none.UpTo.Degrees, IsMeasured: false, 0),
        FlashPointResult.NoneFound none => Lowest(none.LeftOut, (double)none.UpTo.Degrees),
        FlashPointResult.Unknown unknown => Lowest(unknown.LeftOut, double.MaxValue),
        _ => null,
    };

    /// <summary>Where every part that could not be reckoned with has a flash point of its own, the lowest stands for the whole.</summary>
    private static FlashPointValue? Lowest(IReadOnlyList<LeftOut> parts, double highest) =>
        parts.Count > 0 && parts.All(part => part.FlashPoint is not null)
            ? new((decimal)Math.Min(highest, parts.Min(part => part.FlashPoint!.Value)), IsMeasured: false, IsStandIn: true)
            : null;
}
