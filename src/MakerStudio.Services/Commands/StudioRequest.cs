namespace MakerStudio.Services;

/// <summary>Who acts: the person and the stamp their sign-in carried. A changed stamp has no power.</summary>
public sealed record Actor(Guid PersonId, string Stamp);

/// <summary>A state-changing request. The id is made before the click, so that a repeat has one effect.</summary>
public abstract record StudioRequest
{
    public Guid RequestId { get; set; } = Guid.CreateVersion7();
}
