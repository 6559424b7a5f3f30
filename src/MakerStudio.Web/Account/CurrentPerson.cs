using System.Security.Claims;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Account;

/// <summary>The person in front of this page, as their sign-in says; scoped to the request or the circuit.</summary>
public sealed class CurrentPerson(AuthenticationStateProvider authentication, People people, IOptions<IdentityOptions> identity)
{
    /// <summary>
    /// Who acts, for a command. When the sign-in has ended since the page opened this is nobody, and the command answers
    /// <see cref="SignedOut"/>; pages need no check of their own.
    /// </summary>
    public async Task<Actor> ActorAsync() => ActorOf((await authentication.GetAuthenticationStateAsync()).User, identity.Value);

    /// <summary>Name, initials and role as they are now; null when nobody is signed in.</summary>
    public async Task<PersonRow?> PersonAsync()
    {
        var actor = await ActorAsync();
        return actor.PersonId == Guid.Empty ? null : await people.FindAsync(actor.PersonId);
    }

    internal static Actor ActorOf(ClaimsPrincipal user, IdentityOptions identity) =>
        Guid.TryParse(user.FindFirstValue(identity.ClaimsIdentity.UserIdClaimType), out var id)
            ? new Actor(id, user.FindFirstValue(identity.ClaimsIdentity.SecurityStampClaimType) ?? "")
            : new Actor(Guid.Empty, "");
}
