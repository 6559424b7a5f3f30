using FluentValidation;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Accounts;

/// <summary>Invites somebody by a link that works once. Owners only.</summary>
public sealed record InvitePerson : StudioRequest
{
    public string Name { get; set; } = "";
    public PersonRole Role { get; set; } = PersonRole.Maker;

    /// <summary>Made with the request, before the click, so that a repeat names the same link; only its hash is stored.</summary>
    public string Token { get; init; } = OneTimeToken.New();
}

public sealed class InvitePersonValidator : AbstractValidator<InvitePerson>
{
    public InvitePersonValidator()
    {
        RuleFor(r => r.Name).IsName();
        RuleFor(r => r.Role).IsInEnum();
        RuleFor(r => r.Token).Must(OneTimeToken.IsShaped).WithMessage("The link is not complete; reload the page.");
    }
}

public sealed partial class Invitations
{
    private static readonly InvitePersonValidator InvitePersonShape = new();

    /// <returns>What waits now; the link is the request's own token.</returns>
    public Task<Outcome<InvitationRow>> InviteAsync(Actor actor, InvitePerson request, CancellationToken cancel = default) =>
        store.RunAsync<InvitePerson, InvitationRow>(actor, request, InvitePersonShape, command =>
        {
            var row = Add(command, request.Name, request.Role, request.Token);
            command.Record("person", null, $"Invited {row.Name}", Topics.People);
            return Task.FromResult<Outcome<InvitationRow>>(row);
        }, ownersOnly: true, cancel);

    internal static InvitationRow Add(Command command, string name, PersonRole role, string token)
    {
        var invitation = new Invitation
        {
            Purpose = InvitationPurpose.Join, TokenHash = OneTimeToken.Hash(token), Name = name.Trim(), Role = role,
            CreatedById = command.PersonId, CreatedAt = command.Now, ExpiresAt = command.Now + JoinWithin,
        };
        command.Db.Invitations.Add(invitation);
        return new InvitationRow(invitation.Id, invitation.Name, role, invitation.ExpiresAt);
    }
}
