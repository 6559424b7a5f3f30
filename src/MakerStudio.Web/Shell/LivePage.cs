using MakerStudio.Services;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Shell;

/// <summary>
/// A page that reads again when somebody else has changed what it shows, and when time alone changes it. It reads first
/// in its own OnInitializedAsync; what is typed in its forms must live outside of what <see cref="ReadAsync"/> replaces.
/// </summary>
public abstract class LivePage : ComponentBase, IDisposable
{
    private IDisposable? _hearing;
    private ITimer? _timer;
    private bool _reading;
    private bool _again;
    private bool _left;

    [Inject] private StudioNews News { get; set; } = default!;
    [Inject] protected TimeProvider Clock { get; set; } = default!;

    /// <summary>How often to read without news; null for pages on which time changes nothing.</summary>
    protected virtual TimeSpan? ReadEvery => null;

    protected abstract Task ReadAsync();

    protected virtual bool Concerns(News news) => true;

    protected override void OnAfterRender(bool firstRender)
    {
        if (!firstRender || _left)
        {
            return;
        }

        _hearing = News.Subscribe(Hear);
        if (ReadEvery is { } every)
        {
            _timer = Clock.CreateTimer(_ => Follow(), null, every, every);
        }
    }

    private Task Hear(News news)
    {
        if (news.Topic == Topics.Anything || Concerns(news))
        {
            Follow();
        }

        return Task.CompletedTask;
    }

    // The teller of news must not wait for this page's reading.
    private void Follow() => _ = InvokeAsync(FollowAsync);

    private async Task FollowAsync()
    {
        _again = true;
        if (_reading)
        {
            return;
        }

        _reading = true;
        try
        {
            while (_again && !_left)
            {
                _again = false;
                await ReadAsync();
            }

            StateHasChanged();
        }
        catch (Exception e) when (!_left)
        {
            await DispatchExceptionAsync(e);
        }
        finally
        {
            _reading = false;
        }
    }

    public void Dispose()
    {
        _left = true;
        _hearing?.Dispose();
        _timer?.Dispose();
        GC.SuppressFinalize(this);
    }
}
