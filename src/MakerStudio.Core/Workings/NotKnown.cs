namespace MakerStudio.Core.Workings;

/// <summary>Something nobody knows, and what was done about it in the result.</summary>
/// <param name="Means">What stands in for it, and what would settle it.</param>
/// <param name="Percent">Share of the finished product it is about, 0 to 100; null where it is not about a share.</param>
/// <param name="LineIds">The formula lines it is about; empty where it is about the whole.</param>
public sealed record NotKnown(string What, string Means, decimal? Percent, IReadOnlyList<Guid> LineIds);
