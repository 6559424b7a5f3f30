namespace MakerStudio.Web.Shell.Parts;

/// <summary>Every state that is said with a picture and a word.</summary>
public enum StatusKind
{
    Quarantine, Released, OnHold, Rejected, UsedUp,
    Planned, Weighing, Resting, DueForCheck, Ready, Filled, Closed, Discarded,
    Draft, Frozen, InTolerance, Under, Over, Kept, Missing, Passed, NotPassed, Expired,
}

/// <summary>How a state looks: the usual word, the drawing and the colour class of the stylesheet.</summary>
public sealed record StatusLook(string Word, string Glyph, string Css)
{
    public static StatusLook Of(StatusKind kind) => kind switch
    {
        StatusKind.Quarantine => new("Quarantine", Glyphs.DashedSquare, "quar"),
        StatusKind.Released => new("Released", Glyphs.Tick, "rel"),
        StatusKind.OnHold => new("On hold", Glyphs.TwoBars, "hold"),
        StatusKind.Rejected => new("Rejected", Glyphs.Cross, "rej"),
        StatusKind.UsedUp => new("Used up", Glyphs.EmptyVessel, "used"),
        StatusKind.Planned => new("Planned", Glyphs.Calendar, "draft"),
        StatusKind.Weighing => new("Weighing", Glyphs.Scale, "weigh"),
        StatusKind.Resting => new("Resting", Glyphs.Hourglass, "rest"),
        StatusKind.DueForCheck => new("Due for check", Glyphs.Diamond, "due"),
        StatusKind.Ready => new("Ready", Glyphs.Tick, "ready"),
        StatusKind.Filled => new("Filled", Glyphs.Bottles, "ready"),
        StatusKind.Closed => new("Closed", Glyphs.Lock, "frozen"),
        StatusKind.Discarded => new("Discarded", Glyphs.Bin, "used"),
        StatusKind.Draft => new("Draft", Glyphs.Pen, "draft"),
        StatusKind.Frozen => new("Frozen", Glyphs.Lock, "frozen"),
        StatusKind.InTolerance => new("In tolerance", Glyphs.Tick, "rel"),
        StatusKind.Under => new("Under", Glyphs.Triangle, "due"),
        StatusKind.Over => new("Over", Glyphs.Triangle, "err"),
        StatusKind.Kept => new("Kept", Glyphs.Tick, "rel"),
        StatusKind.Missing => new("Missing", Glyphs.Triangle, "err"),
        StatusKind.Passed => new("Passed", Glyphs.Tick, "rel"),
        StatusKind.NotPassed => new("Not passed", Glyphs.Cross, "rej"),
        StatusKind.Expired => new("Expired", Glyphs.Cross, "rej"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This state has no look yet."),
    };
}
