namespace MakerStudio.Web.Shell.Parts;

/// <summary>Where a number on screen came from.</summary>
public enum CameFrom
{
    Plain, Typed, Weighed, WorkedOut, Estimate,
}
