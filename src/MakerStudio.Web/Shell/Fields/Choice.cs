namespace MakerStudio.Web.Shell.Fields;

/// <param name="Closed">Shown struck through: it exists but cannot be chosen here.</param>
public sealed record Choice<T>(T Value, string Text, bool Closed = false);
