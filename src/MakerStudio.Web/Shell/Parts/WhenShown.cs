namespace MakerStudio.Web.Shell.Parts;

/// <summary>Planned ones carry the weekday; Near leaves the year out, for a few weeks around now.</summary>
public enum WhenShown
{
    Moment, Planned, Near, Day, PlannedDay, Clock,
}
