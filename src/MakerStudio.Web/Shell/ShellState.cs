namespace MakerStudio.Web.Shell;

/// <summary>What somebody else is doing now, as a short sentence: "Bo is weighing RS-3".</summary>
public sealed record Doing(string Sentence, string? Href = null);

/// <summary>
/// What the strip and the rooms bar show, for one person's open page. Whoever learns something new sets it and
/// calls <see cref="Tell"/>; the layout and every <c>When</c> on the page follow.
/// </summary>
public sealed class ShellState
{
    private readonly Dictionary<Room, int> _asking = [];

    public event Action? Changed;

    public string StudioName { get; set; } = "MakerStudio";

    /// <summary>Null while nobody is signed in; the strip then has no menu.</summary>
    public string? PersonName { get; set; }

    /// <summary>One to three letters as they stand in the records.</summary>
    public string? Initials { get; set; }

    /// <summary>The studio's own zone; every time on screen is shown in it.</summary>
    public TimeZoneInfo TimeZone { get; set; } = TimeZoneInfo.Utc;

    public IReadOnlyList<Doing> OthersDoing { get; set; } = [];

    /// <summary>How many things in a room ask for a hand; nothing is shown for 0.</summary>
    public int Asking(Room room) => _asking.GetValueOrDefault(room);

    public void SetAsking(Room room, int count) => _asking[room] = count;

    public void Tell() => Changed?.Invoke();
}
