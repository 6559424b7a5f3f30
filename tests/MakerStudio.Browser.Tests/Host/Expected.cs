using MakerStudio.Services;

namespace MakerStudio.Browser.Tests.Host;

internal static class Expected
{
    /// <summary>What a command answered, or a failed test with the words of its refusal.</summary>
    public static T Expect<T>(this Outcome<T> outcome) => outcome switch
    {
        Done<T> done => done.Value,
        Refused<T> refused => throw new Xunit.Sdk.XunitException($"Refused: {refused.Why}"),
        _ => throw new InvalidOperationException("An outcome is done or refused."),
    };
}
