namespace MakerStudio.Web.Shell.Drawings;

/// <summary>One length on a bar, in the rule's unit.</summary>
public sealed record BarPiece(string Label, decimal Value, Series Series);

/// <summary>One bar: its name at the left, pieces end to end, a word at the right.</summary>
public sealed record BarRow(IReadOnlyList<BarPiece> Pieces, string? Name = null, string? Tail = null);

/// <summary>A limit across the rule: ink for one you chose, madder for one that refuses.</summary>
public sealed record BarLimit(decimal At, string Label, bool Refuses = false);
