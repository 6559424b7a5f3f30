using System.Globalization;
using MakerStudio.Core.Products;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Parts;

namespace MakerStudio.Web.Curing;

/// <summary>What the shelf says of one batch. Times are in the studio's zone; rest is elapsed time.</summary>
public sealed class CureWords(CureRow row, TimeZoneInfo zone)
{
    private const double HoursSaidAsHours = 96;

    public ProductKind Kind { get; } = ProductKinds.Get(row.ProductKind);

    public StatusKind Status => row.State switch
    {
        CureState.DueForCheck => StatusKind.DueForCheck,
        CureState.OnHold => StatusKind.OnHold,
        CureState.Ready => StatusKind.Ready,
        _ => StatusKind.Resting,
    };

    public bool IsPastLatest => row.AsOf > row.LatestAt;

    /// <summary>"min Mon 26 Oct 19:00 · ideal Sat 7 Nov · latest Fri 13 Nov".</summary>
    public string Line => string.Join(" · ", new[]
    {
        $"min {Near(row.DueAt)}",
        row.IdealAt > row.DueAt ? $"ideal {Day(row.IdealAt)}" : null,
        row.LatestAt is { } latest ? $"latest {Day(latest)}" : null,
    }.Where(t => t is not null));

    /// <summary>Beside the state: how far, since when, why, by whom.</summary>
    public string About => row.State switch
    {
        CureState.Resting => $"{Span(row.Elapsed)} of {Span(row.DueAt - row.StartedAt)}",
        CureState.DueForCheck => $"{Span(row.DueAt - row.StartedAt)} reached {Ago(row.DueAt)}",
        CureState.OnHold => Held,
        _ when row.EarlyReason is { } reason => $"released early: {reason.TrimEnd().TrimEnd('.')}",
        _ => row.LastCheck is { } check ? $"passed {Near(check.At)}, {check.Initials}" : "",
    };

    // A reason typed as a sentence ends once: the person and the time follow it.
    private string Held => (row.HeldReason?.TrimEnd().TrimEnd('.'), row.LastCheck) switch
    {
        ({ Length: > 0 } reason, { } check) => $"{reason}, {check.Initials} {Near(check.At)}",
        (var reason, { } check) => $"{check.Initials} {Near(check.At)}",
        (var reason, null) => reason ?? "",
    };

    /// <summary>What to do next, in a few words.</summary>
    public string Next => row.State switch
    {
        CureState.DueForCheck when IsPastLatest => "Past its latest: check again before it is filled",
        CureState.DueForCheck => "Smell against the retain; late is not a fault",
        CureState.OnHold => "A check that passes lifts the hold",
        CureState.Ready when IsPastLatest => "Past its latest: check again",
        CureState.Ready => row.AsOf < row.IdealAt ? $"{FillAct}, or leave to {Day(row.IdealAt)}" : FillAct,
        _ when row.Reminder is { } reminder => Remind(reminder),
        _ => $"Check {Near(row.DueAt)}",
    };

    /// <summary>"Fill 24 bottles", "Take into stock".</summary>
    public string FillAct => !Kind.IsSold ? "Take into stock"
        : row.PlannedUnits is { } units ? $"{FillVerb} {Packs.Count(units, row.ProductKind, row.SizeName)}"
        : FillVerb;

    public string FillVerb => Kind.IsSold ? char.ToUpperInvariant(Kind.AfterRestWord[0]) + Kind.AfterRestWord[1..] : "Take into stock";

    /// <summary>"3,000 g room spray": what comes after a comma in the kind's name is left to the record.</summary>
    public string Amount => $"{Written.RoundGrams(row.TargetMilligrams)} g {char.ToLowerInvariant(Kind.Name[0])}{Kind.Name.Split(',')[0][1..]}";

    public string Near(DateTimeOffset at) => Local(at).ToString("ddd d MMM HH:mm", CultureInfo.CurrentCulture);

    public string Day(DateTimeOffset at) => Local(at).ToString("ddd d MMM", CultureInfo.CurrentCulture);

    /// <summary>Elapsed time: hours up to four days, then days and hours.</summary>
    public static string Span(TimeSpan span)
    {
        if (span.TotalHours < HoursSaidAsHours)
        {
            return span.TotalHours < 1 ? $"{span.Minutes} min" : $"{(int)span.TotalHours} h";
        }

        return span.Hours == 0 ? $"{span.Days} d" : $"{span.Days} d {span.Hours} h";
    }

    private string Remind(MoveReminder reminder)
    {
        var today = DateOnly.FromDateTime(Local(row.AsOf).DateTime);
        var when = reminder.On == today ? "today" : reminder.On == today.AddDays(1) ? "tomorrow" : reminder.On.ToString("ddd d MMM", CultureInfo.CurrentCulture);
        return reminder.EveryDays == 1 ? $"{reminder.Verb} {when}" : $"{reminder.Verb} {when}, every {reminder.EveryDays} days";
    }

    private string Ago(DateTimeOffset at)
    {
        var days = DateOnly.FromDateTime(Local(row.AsOf).DateTime).DayNumber - DateOnly.FromDateTime(Local(at).DateTime).DayNumber;
        return days switch
        {
            0 => "at " + Local(at).ToString("HH:mm", CultureInfo.CurrentCulture),
            1 => "yesterday at " + Local(at).ToString("HH:mm", CultureInfo.CurrentCulture),
            _ => $"{days} days ago",
        };
    }

    private DateTimeOffset Local(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, zone);
}
