using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Sets up the studio and its first person, an owner; all of it or nothing.</summary>
public sealed record SetUpStudio : StudioRequest
{
    /// <summary>From the link.</summary>
    public string Token { get; set; } = "";
    public string Name { get; set; } = "";
    public string? Address { get; set; }
    public string? Phone { get; set; }
    public string TimeZone { get; set; } = "Europe/Berlin";
    public string Culture { get; set; } = "en-IE";

    /// <summary>ISO 4217.</summary>
    public string Currency { get; set; } = "EUR";
    public decimal LabourRatePerHour { get; set; } = 18m;
    public decimal TolerancePercent { get; set; } = 0.5m;
    public int ToleranceDivisions { get; set; } = 2;
    public List<NewScale> Scales { get; set; } = [];
    public string PersonName { get; set; } = "";
    public string Initials { get; set; } = "";

    [JsonIgnore]
    public string Passphrase { get; set; } = "";

    /// <summary>Somebody to invite at once; null for working alone.</summary>
    public string? SecondName { get; set; }

    /// <inheritdoc cref="InvitePerson.Token"/>
    public string SecondToken { get; set; } = OneTimeToken.New();

    /// <summary>The studio holds invented things to learn on.</summary>
    public bool IsSample { get; set; }
}

/// <summary>A scale to put on the bench, in milligrams.</summary>
public sealed record NewScale(string Name, long CapacityMilligrams, long ReadabilityMilligrams);

/// <summary>What stands after set-up; <paramref name="Second"/> when somebody was invited, by the request's own token.</summary>
public sealed record StudioSetUp(PersonRow Owner, InvitationRow? Second);

public sealed class SetUpStudioValidator : AbstractValidator<SetUpStudio>
{
    public SetUpStudioValidator()
    {
        RuleFor(r => r.Name).NotEmpty().WithMessage("The studio needs a name.").MaximumLength(120).WithMessage("The studio's name has at most 120 letters.");
        RuleFor(r => r.TimeZone).IsTimeZone();
        RuleFor(r => r.Culture).IsCulture();
        RuleFor(r => r.Currency).IsCurrency();
        RuleFor(r => r.LabourRatePerHour).InclusiveBetween(0, 100_000).WithMessage("Paid time is from 0 to 100,000 an hour.");
        RuleFor(r => r.TolerancePercent).InclusiveBetween(0, 20).WithMessage("Tolerance is from 0 to 20 % of the target.");
        RuleFor(r => r.ToleranceDivisions).InclusiveBetween(1, 100).WithMessage("Tolerance is from 1 to 100 scale divisions.");
        RuleForEach(r => r.Scales).SetValidator(new NewScaleValidator());
        RuleFor(r => r.PersonName).IsName();
        RuleFor(r => r.Initials).AreInitials();
        RuleFor(r => r.Passphrase).Custom((p, context) => context.CheckPassphrase(p, context.InstanceToValidate.PersonName, context.InstanceToValidate.Name));
        When(r => !string.IsNullOrWhiteSpace(r.SecondName), () => RuleFor(r => r.SecondName!).IsName().OverridePropertyName(nameof(SetUpStudio.SecondName))
            .Must((r, second) => Accounts.PersonName.Normal(second) != Accounts.PersonName.Normal(r.PersonName)).WithMessage("Two people need two names."));
        RuleFor(r => r.SecondToken).Must(OneTimeToken.IsShaped).WithMessage("The second person's link is not complete; reload the page.");
    }
}

public sealed partial class FirstRun
{
    private static readonly SetUpStudioValidator SetUpStudioShape = new();

    public Task<Outcome<StudioSetUp>> SetUpAsync(SetUpStudio request, CancellationToken cancel = default) =>
        store.RunUnsignedAsync<SetUpStudio, StudioSetUp>(request, SetUpStudioShape, async command =>
        {
            if (await Invitations.SpendAsync(command, request.Token, InvitationPurpose.FirstPerson, cancel) is null || await command.Db.Users.AnyAsync(cancel))
            {
                return new LinkSpent();
            }

            command.Db.Studio.Add(new Schema.Studio
            {
                Name = request.Name.Trim(), Address = request.Address, Phone = request.Phone, TimeZone = request.TimeZone, Culture = request.Culture,
                Currency = request.Currency, LabourRatePerHour = request.LabourRatePerHour, TolerancePercent = request.TolerancePercent,
                ToleranceDivisions = request.ToleranceDivisions, IsSample = request.IsSample,
            });
            command.Db.Scales.AddRange(request.Scales.Select(StudioSettings.ToScale));
            var owner = Invitations.NewPerson(command, request.PersonName, request.Initials, request.Passphrase, PersonRole.Owner);
            var second = string.IsNullOrWhiteSpace(request.SecondName)
                ? null
                : Invitations.Add(command, request.SecondName, PersonRole.Owner, request.SecondToken);
            command.Record("studio", null, $"Set up {request.Name.Trim()}", Topics.Studio);
            return new StudioSetUp(PersonRow.Of(owner), second);
        }, cancel);
}
