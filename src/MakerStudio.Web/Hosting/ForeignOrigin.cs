using Microsoft.Net.Http.Headers;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// Refuses what a page of another site sends in a signed-in person's name. The circuit at <c>/_blazor</c> carries the
/// sign-in cookie and, left alone, takes a WebSocket from anywhere.
/// </summary>
internal static class ForeignOrigin
{
    public static Task RefuseAsync(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        var changesSomething = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && !HttpMethods.IsOptions(request.Method);
        if ((changesSomething || request.Path.StartsWithSegments("/_blazor")) && IsForeign(request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return context.Response.WriteAsync("This request came from a page of another site and was refused. Nothing was changed.");
        }

        return next(context);
    }

    /// <summary>Browsers name the origin with every WebSocket and every post; a request without one is not a page's.</summary>
    private static bool IsForeign(HttpRequest request)
    {
        var origin = request.Headers[HeaderNames.Origin].ToString();
        return origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }
}
