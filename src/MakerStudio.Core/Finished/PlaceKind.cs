namespace MakerStudio.Core.Finished;

/// <summary>Where units stand.</summary>
public enum PlaceKind
{
    /// <summary>The studio's own shelf; there is exactly one.</summary>
    Studio,

    /// <summary>Somebody else's shop that sells for us and reports.</summary>
    Consignment,

    /// <summary>A market stall: our own table away from home, and we sell there ourselves.</summary>
    Stall,
}
