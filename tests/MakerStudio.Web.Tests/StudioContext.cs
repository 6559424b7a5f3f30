using System.Security.Claims;
using Bunit;
using Bunit.TestDoubles;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Account;
using MakerStudio.Web.Shell;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using MudBlazor.Services;

namespace MakerStudio.Web.Tests;

/// <summary>A page on a real studio of its own, with Ana signed in.</summary>
public abstract class StudioContext : BunitContext, IAsyncLifetime
{
    protected TestStudio Studio { get; private set; } = default!;

    public async Task InitializeAsync()
    {
        Studio = await TestStudio.NewAsync();
        DefaultWaitTimeout = TimeSpan.FromSeconds(15);
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices(o => o.PopoverOptions.CheckForPopoverProvider = false);
        Services.AddSingleton<TimeProvider>(Studio.Clock);
        Services.AddScoped<ShellState>();
        Services.AddSingleton(Studio.Get<StudioNews>());
        Services.AddSingleton(Studio.Get<People>());
        Services.AddSingleton(Options.Create(new IdentityOptions()));
        Services.AddScoped<CurrentPerson>();
        Use();
        var identity = new IdentityOptions().ClaimsIdentity;
        AddAuthorization().SetAuthorized("Ana").SetClaims(
            new Claim(identity.UserIdClaimType, Studio.Ana.PersonId.ToString()), new Claim(identity.SecurityStampClaimType, Studio.Ana.Stamp));
    }

    /// <summary>Which services of the studio the page asks for.</summary>
    protected abstract void Use();

    protected void Use<T>()
        where T : class => Services.AddSingleton(Studio.Get<T>());

    async Task IAsyncLifetime.DisposeAsync()
    {
        await DisposeAsync();
        await Studio.DisposeAsync();
    }
}
