using MakerStudio.Services.Accounts;
using MakerStudio.Web.Shell;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Account;

/// <summary>The few addresses that answer without a page.</summary>
internal static class AccountEndpoints
{
    public const string CreationOptionsPath = "/account/passkey/creation-options";
    public const string RequestOptionsPath = "/account/passkey/request-options";
    private const string Json = "application/json";

    public static void MapPasskeyOptions(this WebApplication app)
    {
        app.MapPost(CreationOptionsPath, async (HttpContext context, SignIn signIn, IOptions<IdentityOptions> identity) =>
            await signIn.PasskeyCreationOptionsAsync(CurrentPerson.ActorOf(context.User, identity.Value), context.RequestAborted) is { } options
                ? Results.Text(options, Json)
                : Results.Unauthorized()).AddEndpointFilter(OwnFormsOnlyAsync);
        app.MapPost(RequestOptionsPath, async (SignIn signIn) => Results.Text(await signIn.PasskeyRequestOptionsAsync(), Json))
            .AddEndpointFilter(OwnFormsOnlyAsync).AllowAnonymous();
    }

    public static void MapSignOut(this WebApplication app) =>
        app.MapPost(ShellSetup.SignOutPath, async (SignIn signIn) =>
        {
            await signIn.OutAsync();
            return Results.LocalRedirect(AccountSetup.SignInPath);
        }).AddEndpointFilter(OwnFormsOnlyAsync).AllowAnonymous();

    private static async ValueTask<object?> OwnFormsOnlyAsync(EndpointFilterInvocationContext invocation, EndpointFilterDelegate next)
    {
        var context = invocation.HttpContext;
        return await context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context)
            ? await next(invocation)
            : Results.BadRequest("This form was opened too long ago. Nothing was changed; load the page again.");
    }
}
