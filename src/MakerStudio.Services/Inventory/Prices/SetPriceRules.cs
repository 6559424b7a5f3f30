using FluentValidation;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What prices go by when a product or a channel says nothing else.</summary>
public sealed record SetPriceRules : StudioRequest
{
    /// <summary>Offered to new channels.</summary>
    public decimal? TaxPercent { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>What a worked-out tag ends in, e.g. 0.50; null for any coin.</summary>
    public decimal? Ending { get; set; }

    /// <summary>Null watches only products with a floor of their own.</summary>
    public decimal? FloorPercent { get; set; }

    /// <summary>The version the form was opened with; 0 when there was none.</summary>
    public uint Version { get; set; }
}

public sealed class SetPriceRulesValidator : AbstractValidator<SetPriceRules>
{
    public SetPriceRulesValidator()
    {
        RuleFor(r => r.TaxPercent).NotNull().WithMessage("Give the tax rate, 0 if you charge none.").InclusiveBetween(0, 100).WithMessage("A tax rate is from 0 to 100 %.");
        RuleFor(r => r.TaxBasis).IsInEnum();
        RuleFor(r => r.Ending).Must(e => e is null or (>= 0 and < 1) && (e ?? 0) % 0.01m == 0).WithMessage("An ending lies from 0.00 to 0.99, for example 0.50.");
        RuleFor(r => r.FloorPercent).Must(f => f is null or (>= 0 and < 100)).WithMessage("A margin floor is from 0 to below 100 %.");
    }
}

public sealed partial class PriceBook
{
    private static readonly SetPriceRulesValidator RulesShape = new();

    public Task<Outcome<Nothing>> SetRulesAsync(Actor actor, SetPriceRules request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, RulesShape, async command =>
        {
            var rules = await RulesOf(command, request.Version, cancel);
            (rules.TaxRate, rules.TaxBasis, rules.Ending) = (request.TaxPercent!.Value / 100m, request.TaxBasis, request.Ending);
            rules.MarginFloor = request.FloorPercent / 100m;
            command.Record("prices", null, "Changed what prices go by", Topics.Prices);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("what prices go by", "Somebody");
        }, cancel: cancel);

    internal static async Task<PriceRules> RulesOf(Command command, uint? version, CancellationToken cancel)
    {
        if (await command.Db.PriceRules.SingleOrDefaultAsync(cancel) is { } known)
        {
            if (version is { } opened)
            {
                command.ExpectVersion(known, opened);
            }

            return known;
        }

        var rules = new PriceRules();
        command.Db.PriceRules.Add(rules);
        return rules;
    }
}
