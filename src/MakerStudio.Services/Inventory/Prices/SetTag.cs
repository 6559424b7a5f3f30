using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A tag for a product in some channels, from a day on. The tags before stay in the history.</summary>
public sealed record SetTag : StudioRequest
{
    public Guid SizeId { get; set; }
    public List<Guid> ChannelIds { get; set; } = [];

    /// <summary>What stands on the tag; null takes the product out of these channels.</summary>
    public decimal? Amount { get; set; }

    /// <summary>Today or later; null is today.</summary>
    public DateOnly? From { get; set; }
    public string? Note { get; set; }
}

public sealed class SetTagValidator : AbstractValidator<SetTag>
{
    private const decimal Most = 1_000_000m;

    public SetTagValidator()
    {
        RuleFor(r => r.ChannelIds).Must(c => c.Count is >= 1 and <= 50).WithMessage("Choose at least one channel.");
        RuleFor(r => r.Amount).Must(a => a is null or (>= 0 and <= Most) && (a ?? 0) % 0.01m == 0).WithMessage("A tag is from 0 to 1,000,000, in whole cents.");
        RuleFor(r => r.Note).OneLine("The note", 200);
    }
}

/// <summary>The floor of one product's margin.</summary>
public sealed record SetMarginFloor : StudioRequest
{
    public Guid SizeId { get; set; }

    /// <summary>Null takes the studio's own floor again.</summary>
    public decimal? FloorPercent { get; set; }
}

public sealed class SetMarginFloorValidator : AbstractValidator<SetMarginFloor>
{
    public SetMarginFloorValidator() =>
        RuleFor(r => r.FloorPercent).Must(f => f is null or (>= 0 and < 100)).WithMessage("A margin floor is from 0 to below 100 %.");
}

public sealed partial class PriceBook
{
    private static readonly SetTagValidator TagShape = new();
    private static readonly SetMarginFloorValidator FloorShape = new();

    public Task<Outcome<Nothing>> SetTagAsync(Actor actor, SetTag request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, TagShape, async command =>
        {
            if (await NameAsync(command, request.SizeId, cancel) is not { } product)
            {
                return new NotFound("This product");
            }

            var wanted = request.ChannelIds.Distinct().ToArray();
            var channels = await command.Db.SalesChannels.Where(c => wanted.Contains(c.Id) && c.RetiredAt == null).ToListAsync(cancel);
            if (channels.Count != wanted.Length)
            {
                return new NotFound("One of the channels");
            }

            if (request.From < command.Today)
            {
                return new Because($"A tag cannot begin on {AmountWords.Day(request.From.Value)}: what was asked in the past stays as it was.", "Choose today or a later day.");
            }

            command.Db.PriceTags.AddRange(channels.Select(c => new PriceTag
            {
                FormulaSizeId = request.SizeId, SalesChannelId = c.Id, Amount = request.Amount, FromDay = request.From ?? command.Today,
                Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim(), PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
            }));
            var where = string.Join(", ", channels.Select(c => c.Name));
            command.Record("product", request.SizeId, request.Amount is { } amount
                ? $"{product}: tag {AmountWords.Money(amount)} at {where} from {AmountWords.Day(request.From ?? command.Today)}"
                : $"{product}: not sold at {where} from {AmountWords.Day(request.From ?? command.Today)}", Topics.Prices);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> SetFloorAsync(Actor actor, SetMarginFloor request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, FloorShape, async command =>
        {
            if (await NameAsync(command, request.SizeId, cancel) is not { } product)
            {
                return new NotFound("This product");
            }

            command.Db.MarginFloors.Add(new MarginFloorEntry
            {
                FormulaSizeId = request.SizeId, Floor = request.FloorPercent / 100m, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
            });
            command.Record("product", request.SizeId, request.FloorPercent is { } percent
                ? $"{product}: margin floor {AmountWords.Percent(percent / 100m, 1)}" : $"{product}: the studio’s margin floor", Topics.Prices);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);

    private static async Task<string?> NameAsync(Command command, Guid sizeId, CancellationToken cancel) => await (
        from size in command.Db.FormulaSizes
        join formula in command.Db.Formulas on size.FormulaId equals formula.Id
        where size.Id == sizeId && size.RetiredAt == null
        select formula.Name + ", " + size.Name).SingleOrDefaultAsync(cancel);
}
