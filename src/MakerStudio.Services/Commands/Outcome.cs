namespace MakerStudio.Services;

/// <summary>What came of a request: it is done, or it was refused for a reason a person can act on. Bugs throw.</summary>
public abstract record Outcome<T>
{
    public static implicit operator Outcome<T>(T value) => new Done<T>(value);

    public static implicit operator Outcome<T>(Refusal why) => new Refused<T>(why);

    public Refusal? Refusal => (this as Refused<T>)?.Why;

    /// <summary>The value of a request that must have been done.</summary>
    /// <exception cref="InvalidOperationException">It was refused; the message says why.</exception>
    public T Expect() => this switch
    {
        Done<T> done => done.Value,
        Refused<T> refused => throw new InvalidOperationException(refused.Why.ToString()),
        _ => throw new InvalidOperationException("Neither done nor refused."),
    };
}

public sealed record Done<T>(T Value) : Outcome<T>;

public sealed record Refused<T>(Refusal Why) : Outcome<T>;

/// <summary>For requests that answer with nothing but having been done.</summary>
public sealed record Nothing
{
    public static readonly Nothing Value = new();
}
