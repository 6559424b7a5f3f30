using MakerStudio.Services.Accounts;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Account;

/// <summary>Looks again, while a page stays open, whether its sign-in still stands; if not, the page falls back to sign-in.</summary>
internal sealed class StandingSignIn(ILoggerFactory logs, People people, IOptions<IdentityOptions> identity)
    : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => SignInRules.LooksAgain;

    protected override Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken) =>
        people.IsSignedInAsync(CurrentPerson.ActorOf(authenticationState.User, identity.Value), cancellationToken);
}
