using MakerStudio.Services;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library;

/// <summary>Keeps the draft as it is typed: one write at a time, nothing lost when two people write.</summary>
public partial class FormulaPage
{
    /// <summary>Keeps what is typed; a change made while one is being kept goes out right after it.</summary>
    private Task ChangedAsync()
    {
        _dirty = true;
        return _keeping ? Task.CompletedTask : _keep = KeepAllAsync();
    }

    private async Task KeepAllAsync()
    {
        _keeping = true;
        try
        {
            while (_dirty && Form!.IsRead && _stale is null)
            {
                _dirty = false;
                await KeepAsync();
            }
        }
        finally
        {
            _keeping = false;
        }

        if (_skipped)
        {
            await ReadAsync();
        }
    }

    private async Task KeepAsync()
    {
        var outcome = await Versions.KeepAsync(await Person.ActorAsync(), Form!.ToRequest());
        _stale = outcome.Refusal as StaleDraft;
        _why = _stale is null ? outcome.Refusal : null;
        if (outcome is Done<DraftKept> done)
        {
            (Form.Version, Form.KeptAt) = (done.Value.Version, done.Value.KeptAt);
        }
    }

    private async Task TakeTheirsAsync()
    {
        Form!.Take(_stale!.Theirs);
        (_stale, _why, _dirty) = (null, null, false);
        await ReadAsync();
    }

    private Task KeepMineAsync()
    {
        Form!.Version = _stale!.Theirs.Version;
        _stale = null;
        return ChangedAsync();
    }

    /// <summary>Waits for what is being kept and holds the next keep back, so that two writes of one page never meet.</summary>
    private async Task<uint> HoldAsync()
    {
        while (_keeping)
        {
            await _keep;
            await Task.Yield();
        }

        _keeping = true;
        return Form!.Version;
    }

    private Task LetGoAsync(DraftKept? kept)
    {
        Form!.Version = kept?.Version ?? Form.Version;
        _keeping = false;
        return _dirty ? ChangedAsync() : Task.CompletedTask;
    }
}
