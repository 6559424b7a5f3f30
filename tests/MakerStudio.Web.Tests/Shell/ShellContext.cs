using Bunit;
using Bunit.TestDoubles;
using MakerStudio.Web.Shell;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using MudBlazor.Services;

namespace MakerStudio.Web.Tests.Shell;

/// <summary>A page of the shell without a host: our services, MudBlazor, and a clock the test moves.</summary>
public abstract class ShellContext : BunitContext, IAsyncLifetime
{
    protected ShellContext()
    {
        // A busy machine may take longer than the usual second to draw; nothing waits this long when it works.
        DefaultWaitTimeout = TimeSpan.FromSeconds(15);
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices(o => o.PopoverOptions.CheckForPopoverProvider = false);
        Services.AddSingleton<TimeProvider>(Clock);
        Services.AddScoped<ShellState>();
    }

    protected FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 10, 26, 18, 12, 0, TimeSpan.Zero));

    protected ShellState State => Services.GetRequiredService<ShellState>();

    public Task InitializeAsync() => Task.CompletedTask;

    // MudBlazor holds services that only know how to close asynchronously.
    Task IAsyncLifetime.DisposeAsync() => DisposeAsync().AsTask();
}
