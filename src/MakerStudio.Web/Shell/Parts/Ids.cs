namespace MakerStudio.Web.Shell.Parts;

/// <summary>Ids that tie a label, an error or a title to its part within one page.</summary>
public static class Ids
{
    private static long _last;

    public static string Next(string prefix) => $"{prefix}-{Interlocked.Increment(ref _last):x}";
}
