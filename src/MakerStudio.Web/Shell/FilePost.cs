using Microsoft.AspNetCore.Http.Features;

namespace MakerStudio.Web.Shell;

/// <summary>A form with a file, sent by plain HTTP because it is too large for the circuit.</summary>
internal static class FilePost
{
    /// <summary>What the fields and boundaries around a file may take, bytes.</summary>
    private const int FormAround = 64 * 1024;

    /// <summary>Whether the post says how long it is and is no longer than a file of this many bytes needs; lifts the server's own limit to that.</summary>
    public static bool Fits(HttpContext context, long mostBytes)
    {
        if (context.Request.ContentLength is not { } length || length > mostBytes + FormAround)
        {
            return false;
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } most)
        {
            most.MaxRequestBodySize = mostBytes + FormAround;
        }

        return true;
    }

    /// <exception cref="InvalidDataException">It did not come through whole, or is longer than it may be.</exception>
    /// <exception cref="BadHttpRequestException">The line broke.</exception>
    public static Task<IFormCollection> ReadAsync(HttpContext context, long mostBytes, CancellationToken cancel) =>
        context.Request.ReadFormAsync(new FormOptions { MultipartBodyLengthLimit = mostBytes + FormAround, ValueLengthLimit = FormAround }, cancel);
}
