namespace MakerStudio.Web.Account;

/// <summary>Where to go after signing in.</summary>
internal static class ReturnPath
{
    /// <summary>
    /// The path when it lies within this studio, else the first page. "//elsewhere" and "/\elsewhere" are other sites to a
    /// browser, and it drops tabs and line breaks before it looks.
    /// </summary>
    public static string Local(string? path) =>
        path is ['/', ..] && path is not ['/', '/' or '\\', ..] && !path.Any(char.IsControl) ? path : "/";
}
