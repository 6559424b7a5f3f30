namespace MakerStudio.Services.Accounts;

/// <summary>An owner may also invite, remove and change the studio's settings; a maker does everything else.</summary>
public enum PersonRole { Maker, Owner }

public enum InvitationPurpose { FirstPerson, Join, NewPassphrase }
