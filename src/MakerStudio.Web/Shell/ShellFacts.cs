using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Shell;

/// <summary>Fills <see cref="ShellState"/> when a page opens, and again on news and as time passes. Draws nothing.</summary>
public sealed class ShellFacts : LivePage
{
    private static readonly TimeSpan AsTimePasses = TimeSpan.FromMinutes(1);

    [Inject] private StudioPulse Pulse { get; set; } = default!;
    [Inject] private CurrentPerson Me { get; set; } = default!;
    [Inject] private ShellState Shell { get; set; } = default!;

    /// <summary>Carried from the first drawing to the circuit, so that the strip does not change under the reader.</summary>
    [PersistentState] public ShellView? View { get; set; }

    protected override TimeSpan? ReadEvery => AsTimePasses;

    protected override async Task OnInitializedAsync()
    {
        if (View is null)
        {
            await ReadAsync();
        }
        else
        {
            Show(View);
        }
    }

    protected override async Task ReadAsync()
    {
        var person = await Me.PersonAsync();
        var pulse = person is null ? null : await Pulse.ReadAsync();
        View = new ShellView(pulse, person?.Id, person?.Name, person?.Initials);
        Show(View);
    }

    private void Show(ShellView view)
    {
        (Shell.PersonName, Shell.Initials) = (view.Name, view.Initials);
        if (view.Pulse is { } pulse)
        {
            Shell.StudioName = pulse.StudioName;
            Shell.TimeZone = TimeZoneInfo.FindSystemTimeZoneById(pulse.TimeZone);
            var others = pulse.Weighing.Where(w => w.PersonId != view.PersonId);
            Shell.OthersDoing = [.. others.Select(w => new Doing($"{w.Name} is weighing {w.BatchCode}", $"/bench/{w.BatchCode}"))];
            Shell.SetAsking(Room.Today, pulse.CuringAsks + pulse.Weighing.Count);
            Shell.SetAsking(Room.Storeroom, pulse.StoreroomAsks);
            Shell.SetAsking(Room.Bench, pulse.Weighing.Count);
            Shell.SetAsking(Room.Curing, pulse.CuringAsks);
        }

        Shell.Tell();
    }
}

public sealed record ShellView(PulseRow? Pulse, Guid? PersonId, string? Name, string? Initials);
