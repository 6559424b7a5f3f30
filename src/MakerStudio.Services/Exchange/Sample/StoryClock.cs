namespace MakerStudio.Services.Exchange;

/// <summary>The clock the sample studio comes about on: it stands still until the story goes on, and never goes back.</summary>
internal sealed class StoryClock(DateTimeOffset start) : TimeProvider
{
    private DateTimeOffset _now = start.ToUniversalTime();

    public override DateTimeOffset GetUtcNow() => _now;

    /// <summary>Goes on to a moment; one that has passed already leaves the clock as it is.</summary>
    public void Reach(DateTimeOffset moment)
    {
        if (moment > _now)
        {
            _now = moment.ToUniversalTime();
        }
    }

    public void Pass(int minutes) => _now = _now.AddMinutes(minutes);
}
