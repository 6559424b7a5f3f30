using MakerStudio.Core.Quantities;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Shell.Fields;

/// <summary>
/// The live way: what can be read counts after a short rest of the hand, while the caret stays where it is. What cannot
/// be read changes nothing until a longer pause or until the field is left.
/// </summary>
public partial class QuantityField
{
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(1500);
    private ITimer? _timer;
    private string? _text;

    // What the page last wrote into the field: held while somebody types, so that nothing is ever written over them.
    private string? _onScreen;

    [Inject] private TimeProvider Clock { get; set; } = default!;

    /// <summary>Takes the amount while it is typed, for fields whose results stand beside them.</summary>
    [Parameter] public bool Live { get; set; }

    private void Type(string? text)
    {
        _onScreen ??= Shown;
        _text = text;
        After(Rest, RestedAsync);
    }

    /// <summary>Enter, or the field being left: the browser says what stands in it.</summary>
    private Task LeaveWithAsync(string? text)
    {
        _timer?.Dispose();
        _text = null;
        _onScreen = Live ? text ?? "" : null;
        return TakeAsync(text);
    }

    /// <summary>Text typed back to what it was is left without a change; it counts all the same.</summary>
    private async Task LeaveAsync()
    {
        _timer?.Dispose();
        var open = _text;
        _onScreen = _text = null;
        if (open is not null)
        {
            await TakeAsync(open);
        }
    }

    private Task RestedAsync()
    {
        // Another unit, an emptied field and what cannot be read wait longer: they are often halfway to something else.
        if (!string.IsNullOrWhiteSpace(_text) && Reading(_text) is QuantityReading.Read read && (read.Unit is null || read.Unit == Unit))
        {
            return TakeAsync(_text);
        }

        After(Pause - Rest, () => TakeAsync(_text));
        return Task.CompletedTask;
    }

    private void After(TimeSpan wait, Func<Task> then)
    {
        _timer?.Dispose();
        var typed = _text;
        _timer = Clock.CreateTimer(
            _ => _ = InvokeAsync(async () =>
            {
                if (_text is null || _text != typed)
                {
                    return; // left, or typed on, in the same instant
                }

                await then();
                StateHasChanged();
            }),
            null, wait, Timeout.InfiniteTimeSpan);
    }
}
