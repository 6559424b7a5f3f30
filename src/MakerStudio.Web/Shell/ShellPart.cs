using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Shell;

/// <summary>A part of the shell that redraws itself when <see cref="ShellState"/> tells of a change.</summary>
public abstract class ShellPart : ComponentBase, IDisposable
{
    [Inject] protected ShellState Shell { get; set; } = default!;

    protected override void OnInitialized() => Shell.Changed += Follow;

    private void Follow() => _ = InvokeAsync(StateHasChanged);

    public void Dispose()
    {
        Shell.Changed -= Follow;
        GC.SuppressFinalize(this);
    }
}
