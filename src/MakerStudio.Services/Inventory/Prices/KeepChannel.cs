using System.Text.Json;
using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Adds a way to sell, or changes one. Percentages are of what they stand beside.</summary>
public sealed record KeepChannel : StudioRequest
{
    /// <summary>Null adds one.</summary>
    public Guid? ChannelId { get; set; }
    public string Name { get; set; } = "";
    public decimal? TaxPercent { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>Money of each unit sold besides its making.</summary>
    public decimal? CostPerUnit { get; set; }

    /// <summary>Part of the net that is ours: 100 when we sell ourselves.</summary>
    public decimal? OurSharePercent { get; set; } = 100m;

    /// <summary>Contribution wanted of each unit.</summary>
    public decimal? Wanted { get; set; }
    public List<TypedFee> Fees { get; set; } = [];
    public uint Version { get; set; }
}

/// <summary>One fee on each unit sold.</summary>
public sealed record TypedFee
{
    public string? Name { get; set; }
    public decimal? Percent { get; set; }
    public decimal? Fixed { get; set; }
    public FeeBasis Basis { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Name) && Percent is null && Fixed is null;
}

public sealed class KeepChannelValidator : AbstractValidator<KeepChannel>
{
    private const decimal Most = 100_000m;
    private const int MostFees = 10;

    public KeepChannelValidator()
    {
        RuleFor(r => r.Name).OneLine("The name", 60);
        RuleFor(r => r.Name).NotEmpty().WithMessage("The channel needs a name, such as Web shop.");
        RuleFor(r => r.TaxPercent).NotNull().WithMessage("Give the tax rate, 0 if none.").InclusiveBetween(0, 100).WithMessage("A tax rate is from 0 to 100 %.");
        RuleFor(r => r.TaxBasis).IsInEnum();
        RuleFor(r => r.CostPerUnit).InclusiveBetween(0, Most).WithMessage("The cost of a sale is from 0 to 100,000.");
        RuleFor(r => r.OurSharePercent).Must(s => s is > 0 and <= 100).WithMessage("Our part of the net is above 0 % and at most 100 %.");
        RuleFor(r => r.Wanted).InclusiveBetween(0, Most).WithMessage("The wanted contribution is from 0 to 100,000.");
        RuleFor(r => r.Fees).Must(f => f.Count <= MostFees).WithMessage("At most 10 fees.");
        RuleForEach(r => r.Fees).Where(f => !f.IsEmpty).ChildRules(fee =>
        {
            fee.RuleFor(f => f.Name).OneLine("The fee", 60);
            fee.RuleFor(f => f.Name).NotEmpty().WithMessage("Name the fee, for example Card.");
            fee.RuleFor(f => f.Percent).InclusiveBetween(0, 100).WithMessage("A fee is from 0 to 100 %.");
            fee.RuleFor(f => f.Fixed).InclusiveBetween(0, Most).WithMessage("A fixed fee is from 0 to 100,000.");
        });
    }
}

public sealed record ChannelKept(Guid ChannelId);

/// <summary>Takes a channel out of use. Its tags stay in the history.</summary>
public sealed record RetireChannel : StudioRequest
{
    public Guid ChannelId { get; set; }
}

public sealed partial class PriceBook
{
    private static readonly KeepChannelValidator ChannelShape = new();
    private static readonly JsonSerializerOptions FeesJson = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    public Task<Outcome<ChannelKept>> KeepChannelAsync(Actor actor, KeepChannel request, CancellationToken cancel = default) =>
        store.RunAsync<KeepChannel, ChannelKept>(actor, request, ChannelShape, async command =>
        {
            var name = request.Name.Trim();
            if (await command.Db.SalesChannels.AnyAsync(c => c.RetiredAt == null && c.Id != request.ChannelId && EF.Functions.ILike(c.Name, PlainText.SamePattern(name)), cancel))
            {
                return new Because($"There is a channel called {name} already.", "Change that one, or give this one another name.");
            }

            var channel = await OpenAsync(command, request, name, cancel);
            if (channel is null)
            {
                return new NotFound("This channel");
            }

            channel.Name = name;
            (channel.TaxRate, channel.TaxBasis) = (request.TaxPercent!.Value / 100m, request.TaxBasis);
            (channel.CostPerUnit, channel.OurShare, channel.Wanted) = (request.CostPerUnit ?? 0m, request.OurSharePercent!.Value / 100m, request.Wanted ?? 0m);
            channel.Fees.Clear();
            channel.Fees.AddRange(request.Fees.Where(f => !f.IsEmpty).Select((f, i) =>
                new SalesChannelFee { Position = i + 1, Name = f.Name!.Trim(), Rate = (f.Percent ?? 0m) / 100m, Fixed = f.Fixed ?? 0m, Basis = f.Basis }));
            command.Db.ChannelTerms.Add(TermsOf(channel, command.Now));
            command.Record("channel", channel.Id, $"{(request.ChannelId is null ? "Added" : "Changed")} the channel {name}", Topics.Prices);
            return await command.TrySaveAsync() ? new ChannelKept(channel.Id) : new Stale($"the channel {name}", "Somebody");
        }, cancel: cancel);

    private static ChannelTerms TermsOf(SalesChannel channel, DateTimeOffset at) => new()
    {
        SalesChannelId = channel.Id, At = at, TaxRate = channel.TaxRate, TaxBasis = channel.TaxBasis, CostPerUnit = channel.CostPerUnit, OurShare = channel.OurShare,
        Fees = JsonSerializer.Serialize(CoreOf(channel).Fees, FeesJson),
    };

    private static async Task<SalesChannel?> OpenAsync(Command command, KeepChannel request, string name, CancellationToken cancel)
    {
        if (request.ChannelId is not { } id)
        {
            var added = new SalesChannel { Name = name, CreatedAt = command.Now };
            command.Db.SalesChannels.Add(added);
            return added;
        }

        var channel = await command.Db.SalesChannels.Include(c => c.Fees).SingleOrDefaultAsync(c => c.Id == id && c.RetiredAt == null, cancel);
        if (channel is not null)
        {
            command.ExpectVersion(channel, request.Version);
            // The row itself counts as changed when only its fees are.
            command.Db.Entry(channel).Property(c => c.Name).IsModified = true;
            await command.Db.SalesChannelFees.Where(f => f.SalesChannelId == id).ExecuteDeleteAsync(cancel);
            command.Db.ChangeTracker.Entries<SalesChannelFee>().ToList().ForEach(e => e.State = EntityState.Detached);
        }

        return channel;
    }

    public Task<Outcome<Nothing>> RetireChannelAsync(Actor actor, RetireChannel request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, null, async command =>
        {
            if (await command.Db.SalesChannels.SingleOrDefaultAsync(c => c.Id == request.ChannelId, cancel) is not { } channel)
            {
                return new NotFound("This channel");
            }

            channel.RetiredAt ??= command.Now;
            command.Record("channel", channel.Id, $"Retired the channel {channel.Name}", Topics.Prices);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);
}
