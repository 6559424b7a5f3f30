namespace MakerStudio.Core.Blending;

/// <summary>How the amount of a formula line was typed.</summary>
public enum LineBasis
{
    PartsByWeight,
    PartsByVolume,
    PercentByWeight,
    PercentByVolume,

    /// <summary>Per cent of the wax, not of the finished candle.</summary>
    PercentOfWax,
    Grams,
    Millilitres,

    /// <summary>For trials only: a drop has no fixed mass until twenty of them have been weighed.</summary>
    Drops,
}
