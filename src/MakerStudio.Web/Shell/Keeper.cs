using MakerStudio.Services;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Shell;

/// <summary>Keeps a form while it is typed: one keeping at a time, and once more when something was typed meanwhile.</summary>
/// <param name="keep">Keeps what stands in the form now over the version seen last.</param>
public sealed class Keeper(Func<DateTimeOffset?, Task<Outcome<DraftKept>>> keep)
{
    private bool _keeping;
    private bool _again;

    /// <summary>When the version on this screen was kept; null while nothing was.</summary>
    public DateTimeOffset? KeptAt { get; set; }

    /// <summary>Why it was not kept; null when it was.</summary>
    public Refusal? Why { get; private set; }

    public async Task KeepAsync()
    {
        _again = true;
        if (_keeping)
        {
            return;
        }

        _keeping = true;
        try
        {
            while (_again)
            {
                _again = false;
                var outcome = await keep(KeptAt);
                Why = outcome.Refusal;
                KeptAt = outcome is Done<DraftKept> done ? done.Value.KeptAt : KeptAt;
            }
        }
        finally
        {
            _keeping = false;
        }
    }

    /// <summary>Keeps this screen's version over the other person's.</summary>
    public Task KeepOverAsync(Stale theirs)
    {
        KeptAt = theirs.ChangedAt;
        return KeepAsync();
    }
}
