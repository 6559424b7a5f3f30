namespace MakerStudio.Core.Workings;

/// <summary>Where a figure or a rule is from.</summary>
/// <param name="Citation">Enough to find it again: title, number, year, place in the text.</param>
public sealed record Source(string Citation, DataStatus Status)
{
    /// <summary>What a page says beside the figure, or null where the text itself was read or the figure worked out.</summary>
    public string? Caution => Status is DataStatus.Memory or DataStatus.Secondary ? DataStatuses.InWords(Status) : null;
}

/// <summary>A figure with where it is from.</summary>
public sealed record Sourced<T>(T Value, Source Source);
