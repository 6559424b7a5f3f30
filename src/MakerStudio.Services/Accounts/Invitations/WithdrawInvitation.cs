using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Makes an invitation's link open nothing. Owners only.</summary>
public sealed record WithdrawInvitation : StudioRequest
{
    public Guid InvitationId { get; set; }
}

public sealed partial class Invitations
{
    public Task<Outcome<Nothing>> WithdrawAsync(Actor actor, WithdrawInvitation request, CancellationToken cancel = default) =>
        store.RunAsync<WithdrawInvitation, Nothing>(actor, request, null, async command =>
        {
            var found = await command.Db.Invitations.FromSql($"select * from invitations where id = {request.InvitationId} for update").ToListAsync(cancel);
            if (found.SingleOrDefault() is not { UsedAt: null, Purpose: InvitationPurpose.Join } invitation)
            {
                return new NotFound("This invitation");
            }

            command.Db.Invitations.Remove(invitation);
            command.Record("person", null, $"Withdrew the invitation for {invitation.Name}", Topics.People);
            return Nothing.Value;
        }, ownersOnly: true, cancel);
}
