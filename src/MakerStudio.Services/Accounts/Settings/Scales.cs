using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

public sealed record ScaleRow(Guid Id, string Name, long CapacityMilligrams, long ReadabilityMilligrams, DateTimeOffset? RetiredAt);

/// <summary>Puts a scale on the bench. Owners only.</summary>
public sealed record AddScale : StudioRequest
{
    public string Name { get; set; } = "";
    public long CapacityMilligrams { get; set; }
    public long ReadabilityMilligrams { get; set; }
}

/// <summary>Takes a scale off the bench; weighings keep its name. Owners only.</summary>
public sealed record RetireScale : StudioRequest
{
    public Guid ScaleId { get; set; }
}

public sealed class NewScaleValidator : AbstractValidator<NewScale>
{
    /// <summary>A tonne: more is not weighed at a bench.</summary>
    private const long LargestCapacity = 1_000_000_000;

    public NewScaleValidator()
    {
        RuleFor(s => s.Name).Must(n => n.Trim().Length is >= 1 and <= 60).WithMessage("A scale has a name of up to 60 letters.");
        RuleFor(s => s.ReadabilityMilligrams).GreaterThan(0).WithMessage("A scale's step is 1 mg or more.");
        RuleFor(s => s.CapacityMilligrams).InclusiveBetween(1, LargestCapacity).WithMessage("A scale weighs up to at most 1,000 kg.")
            .GreaterThan(s => s.ReadabilityMilligrams).WithMessage("A scale weighs up to more than its own step.");
    }
}

public sealed class AddScaleValidator : AbstractValidator<AddScale>
{
    public AddScaleValidator() => RuleFor(r => r).Custom((request, context) =>
    {
        foreach (var failure in new NewScaleValidator().Validate(StudioSettings.ScaleOf(request)).Errors)
        {
            context.AddFailure(failure);
        }
    });
}

public sealed partial class StudioSettings
{
    private static readonly AddScaleValidator AddScaleShape = new();

    /// <summary>Every scale, those in use first, by name.</summary>
    public async Task<IReadOnlyList<ScaleRow>> ScalesAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Scales.OrderBy(s => s.RetiredAt != null).ThenBy(s => s.Name).ThenBy(s => s.Id)
            .Select(s => new ScaleRow(s.Id, s.Name, s.CapacityMilligrams, s.ReadabilityMilligrams, s.RetiredAt)).ToListAsync(cancel);
    }

    public Task<Outcome<Nothing>> AddScaleAsync(Actor actor, AddScale request, CancellationToken cancel = default) =>
        store.RunAsync<AddScale, Nothing>(actor, request, AddScaleShape, command =>
        {
            var scale = ToScale(ScaleOf(request));
            command.Db.Scales.Add(scale);
            command.Record("scale", scale.Id, $"Put {scale.Name} on the bench", Topics.Studio);
            return Task.FromResult<Outcome<Nothing>>(Nothing.Value);
        }, ownersOnly: true, cancel);

    public Task<Outcome<Nothing>> RetireScaleAsync(Actor actor, RetireScale request, CancellationToken cancel = default) =>
        store.RunAsync<RetireScale, Nothing>(actor, request, null, async command =>
        {
            if (await command.Db.Scales.SingleOrDefaultAsync(s => s.Id == request.ScaleId && s.RetiredAt == null, cancel) is not { } scale)
            {
                return new NotFound("This scale");
            }

            scale.RetiredAt = command.Now;
            command.Record("scale", scale.Id, $"Took {scale.Name} off the bench", Topics.Studio);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("the scale", "Somebody");
        }, ownersOnly: true, cancel);

    internal static NewScale ScaleOf(AddScale request) => new(request.Name, request.CapacityMilligrams, request.ReadabilityMilligrams);

    internal static Scale ToScale(NewScale scale) =>
        new() { Name = scale.Name.Trim(), CapacityMilligrams = scale.CapacityMilligrams, ReadabilityMilligrams = scale.ReadabilityMilligrams };
}
