namespace MakerStudio.Services;

/// <summary>
/// Why a request took no effect, in three short parts: what happened, what was kept, what to do.
/// A subject's own refusals are records beside its use case.
/// </summary>
public abstract record Refusal
{
    public abstract string Happened { get; }

    public virtual string Kept => "Nothing was changed, and what you typed is kept.";

    public virtual string ToDo => "";

    public sealed override string ToString() => string.Join(' ', new[] { Happened, Kept, ToDo }.Where(s => s.Length > 0));
}

/// <summary>A field's problem in words; <paramref name="Field"/> is the property path.</summary>
public sealed record FieldProblem(string Field, string Problem);

/// <summary>Shape or range of what was typed.</summary>
public sealed record NotAcceptable(IReadOnlyList<FieldProblem> Problems) : Refusal
{
    public override string Happened => string.Join(' ', Problems.Select(p => p.Problem));
    public override string ToDo => Problems.Count == 1 ? "Change it and try again." : "Change these and try again.";
}

/// <summary>The thing asked for is not there (any more).</summary>
public sealed record NotFound(string What) : Refusal
{
    public override string Happened => $"{What} is not here.";
    public override string ToDo => "It may have been put away; look in the list.";
}

/// <summary>Somebody saved the same thing since the form was opened.</summary>
public sealed record Stale(string What, string ChangedBy, DateTimeOffset? ChangedAt = null) : Refusal
{
    public override string Happened => $"{ChangedBy} changed {What} while you had it open.";
    public override string Kept => "Your version is kept here and nothing of theirs is lost.";
    public override string ToDo => "Look at both, then save again.";
}

/// <summary>The person was signed out everywhere or removed.</summary>
public sealed record SignedOut : Refusal
{
    public override string Happened => "You are signed out of this page.";
    public override string ToDo => "Sign in again; the form stays as it is.";
}

/// <summary>Only an owner may do this.</summary>
public sealed record OwnersOnly : Refusal
{
    public override string Happened => "Only an owner can do this.";
    public override string ToDo => "Ask an owner of the studio.";
}

/// <summary>A request id was used again with other content.</summary>
public sealed record IdUsedForAnother : Refusal
{
    public override string Happened => "This request was already used for something else.";
    public override string ToDo => "Reload the page and do it once more.";
}

/// <summary>The database was too busy or away for all attempts.</summary>
public sealed record TryAgain : Refusal
{
    public override string Happened => "The studio's database did not answer in time.";
    public override string ToDo => "Press again; it is done once, however often you press.";
}

/// <summary>A plain refusal whose three parts are said where it arises.</summary>
public sealed record Because(string Fact, string Advice = "") : Refusal
{
    public override string Happened => Fact;
    public override string ToDo => Advice;
}
