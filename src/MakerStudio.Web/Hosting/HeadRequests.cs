namespace MakerStudio.Web.Hosting;

/// <summary>Answers HEAD like GET without a body; monitors ask so, and pages alone would answer 405.</summary>
internal static class HeadRequests
{
    public static async Task AnswerAsync(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var body = context.Response.Body;
        context.Request.Method = HttpMethods.Get;
        context.Response.Body = Stream.Null;
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Response.Body = body;
        }
    }
}
