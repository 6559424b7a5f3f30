using System.Globalization;
using System.Threading.Channels;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Bench;

/// <summary>
/// What the weigh sheet posts. Plain requests rather than the circuit, so that a reading pressed while the line is down
/// can be kept in the browser and sent again with its id.
/// </summary>
public static class BenchEndpoints
{
    private static readonly TimeSpan Pulse = TimeSpan.FromSeconds(20);

    public static WebApplication MapStudioBench(this WebApplication app)
    {
        // A refusal at the door is a bare 401 for the script; a page of words would be no answer to it.
        var bench = app.MapGroup("/bench").WithMetadata(new SkipStatusCodePagesAttribute());
        var posts = bench.MapGroup("").AddEndpointFilter(RefuseForgedAsync);
        posts.MapPost("/readings", RecordAsync);
        var acts = posts.MapGroup("/acts");
        acts.MapPost("/start", (StartWeighing body, Batches batches, HttpContext context) => Answer(context, actor => batches.StartWeighingAsync(actor, body)));
        acts.MapPost("/take-over", (TakeOver body, Batches batches, HttpContext context) => Answer(context, actor => batches.TakeOverAsync(actor, body)));
        acts.MapPost("/finish-under", (FinishUnder body, WeighSheets sheets, HttpContext context) => Answer(context, actor => sheets.FinishUnderAsync(actor, body)));
        acts.MapPost("/reverse", (ReverseWeighing body, WeighSheets sheets, HttpContext context) => Answer(context, actor => sheets.ReverseAsync(actor, body)));
        acts.MapPost("/smaller", (MakeSmaller body, WeighSheets sheets, HttpContext context) => Answer(context, actor => sheets.MakeSmallerAsync(actor, body)));
        acts.MapPost("/last-addition", (ConfirmLastAddition body, WeighSheets sheets, HttpContext context) => Answer(context, actor => sheets.ConfirmLastAdditionAsync(actor, body)));
        bench.MapGet("/{code}/news", TellAsync);
        return app;
    }

    private static async Task<BenchAnswer> RecordAsync(ReadingBody body, WeighSheets sheets, HttpContext context)
    {
        var (request, why) = body.Read(CultureInfo.CurrentCulture);
        return why is not null
            ? BenchAnswer.Of(new NotAcceptable([new FieldProblem("text", why)]))
            : await Answer(context, actor => sheets.RecordAsync(actor, request!));
    }

    private static async Task<BenchAnswer> Answer<T>(HttpContext context, Func<Actor, Task<Outcome<T>>> act)
    {
        var identity = context.RequestServices.GetRequiredService<IOptions<IdentityOptions>>().Value;
        return BenchAnswer.Of(await act(CurrentPerson.ActorOf(context.User, identity)));
    }

    /// <summary>The page that sent this is from before a sign-in; the script fetches the sheet anew and sends again.</summary>
    private static async ValueTask<object?> RefuseForgedAsync(EndpointFilterInvocationContext invocation, EndpointFilterDelegate next)
    {
        var antiforgery = invocation.HttpContext.RequestServices.GetRequiredService<IAntiforgery>();
        return await antiforgery.IsRequestValidAsync(invocation.HttpContext)
            ? await next(invocation)
            : Results.Json(new BenchAnswer("refusal", "OldPage", "This sheet was opened before the sign-in.", "Your reading is kept.", "Load the sheet again."), statusCode: StatusCodes.Status400BadRequest);
    }

    /// <summary>Server-sent events: a line whenever batches or lots change, and a pulse so that a dead line is noticed.</summary>
    private static async Task TellAsync(string code, StudioNews news, HttpContext context)
    {
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        var heard = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        using var hearing = news.Subscribe(item =>
        {
            if (item.Topic is Topics.Batches or Topics.Lots or Topics.Anything)
            {
                heard.Writer.TryWrite(true);
            }

            return Task.CompletedTask;
        });
        try
        {
            await WriteAsync(context, ": open\n\n");
            while (!context.RequestAborted.IsCancellationRequested)
            {
                using var pulse = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
                pulse.CancelAfter(Pulse);
                var said = await heard.Reader.WaitToReadAsync(pulse.Token).AsTask().ContinueWith(t => t.IsCompletedSuccessfully, TaskScheduler.Default);
                _ = said && heard.Reader.TryRead(out _);
                await WriteAsync(context, said ? $"event: changed\ndata: {code}\n\n" : ": still here\n\n");
            }
        }
        catch (OperationCanceledException)
        {
            // The sheet was left.
        }
    }

    private static async Task WriteAsync(HttpContext context, string text)
    {
        await context.Response.WriteAsync(text, context.RequestAborted);
        await context.Response.Body.FlushAsync(context.RequestAborted);
    }
}
