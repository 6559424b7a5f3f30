namespace MakerStudio.Services;

/// <summary>Something changed: which subject, which one, by whom. Screens re-read; the news carries no data.</summary>
public sealed record News(string Topic, Guid? Id, Guid? PersonId)
{
    /// <summary>Said whenever the line to the database stands anew: anything may have changed before.</summary>
    public static readonly News Anything = new(Topics.Anything, null, null);
}

public static class Topics
{
    public const string Anything = "anything";
    public const string Studio = "studio";
    public const string People = "people";
    public const string Materials = "materials";
    public const string Lots = "lots";
    public const string Formulas = "formulas";
    public const string Batches = "batches";
    public const string Finished = "finished";
    public const string Prices = "prices";
    public const string Books = "books";
    public const string Orders = "orders";
}
