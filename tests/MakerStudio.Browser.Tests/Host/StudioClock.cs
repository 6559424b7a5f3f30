using Microsoft.Extensions.Time.Testing;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>
/// The studio's clock, moved only by the test. Short waits (a rest after typing, a retry) still pass by themselves:
/// a person at a browser cannot advance them.
/// </summary>
public sealed class StudioClock(DateTimeOffset now) : FakeTimeProvider(now)
{
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        System.CreateTimer(callback, state, dueTime, period);

    public override long GetTimestamp() => System.GetTimestamp();

    public override long TimestampFrequency => System.TimestampFrequency;
}
