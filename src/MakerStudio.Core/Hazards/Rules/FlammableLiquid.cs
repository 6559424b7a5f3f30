using System.Globalization;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Flammable liquids by flash point and initial boiling point of the finished mixture. A calculated flash point
/// decides only where it lies at least 5 °C above a limit (2.6.4.3), or farther where its own error is larger: nearer, the more severe category is assumed. With
/// no flash point at all, the most flammable ingredient's category is.
/// </summary>
public sealed class FlammableLiquid : HazardRule
{
    /// <summary>°C; below it categories 1 and 2.</summary>
    private const decimal HighlyFlammableBelow = 23m;

    /// <summary>°C, included.</summary>
    private const decimal FlammableUpTo = 60m;

    /// <summary>°C, included; UN GHS and US only.</summary>
    private const decimal CombustibleUpTo = 93m;

    /// <summary>°C, included; initial boiling point of category 1.</summary>
    private const decimal BoilsEarlyUpTo = 35m;

    /// <summary>°C; above it a liquid that does not sustain combustion need not be category 3.</summary>
    private const decimal MayNotSustainAbove = 35m;

    private static readonly Citation Table = new("CLP Annex I, Table 2.6.1", DataStatus.Read);
    private static readonly Citation Sustained = new("CLP Annex I, 2.6.4.5; UN Manual of Tests and Criteria, 32.5.2 (test L.2)", DataStatus.Memory);
    private static readonly Citation Calculated = new("CLP Annex I, 2.6.4.2 and 2.6.4.3", DataStatus.Memory);
    private static readonly Citation Combustible = new("UN GHS 2.6; 29 CFR 1910.1200 App. B.6", DataStatus.Memory);

    public override string Key => "flammable-liquid";

    public override string Title => "Flammable liquids";

    public override string AppliesTo => "A liquid, not in a pressurised dispenser.";

    public override IReadOnlyList<Citation> Sources => [Table, Calculated, Sustained, Combustible];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.FlammableLiquid];

    public override WorkedExample Example => new(
        "Flash point 22.9 °C, boiling from 78 °C",
        new([], FlashPoint: new(22.9m, true), InitialBoilingPoint: 78m),
        ["Flam. Liq. 2"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        return mixture.Facts switch
        {
            { Form: not PhysicalForm.Liquid } => RuleResult.None,
            { FlashPoint: { } flash } => ByFlashPoint(mixture, flash),
            _ => ByIngredients(mixture),
        };
    }

    private static RuleResult ByFlashPoint(Mixture mixture, FlashPointValue flash)
    {
        HazardCategory? plain = CategoryAt(flash.Degrees, mixture);
        HazardCategory? cautious = flash.IsMeasured ? plain : CategoryAt(flash.Degrees - flash.Margin, mixture);
        var unknown = new List<UnknownHazard>();
        if (cautious != plain)
        {
            unknown.Add(new(
                string.Create(CultureInfo.InvariantCulture, $"The flash point is calculated and lies within {flash.Margin:0.#} °C above a limit."),
                "The more severe category is assumed; a closed-cup test decides.", HazardClass.FlammableLiquid, null));
        }

        if (flash.IsStandIn)
        {
            unknown.Add(new(
                string.Create(CultureInfo.InvariantCulture, $"The flash point of the mixture is not known; {flash.Degrees:0.#} °C, the lowest of the parts that cannot be reckoned with, stands in."),
                "It may be far from that of the mixture, above all with much water in it; a closed-cup test decides.", HazardClass.FlammableLiquid, null));
        }

        if (cautious is HazardCategory.FlamLiq1 or HazardCategory.FlamLiq2 && mixture.Facts.InitialBoilingPoint is null)
        {
            unknown.Add(new(
                "The initial boiling point is not known.",
                "It is taken as above 35 °C unless an ingredient is Flam. Liq. 1.", HazardClass.FlammableLiquid, null));
        }

        RuleStep step = Step(flash.Degrees, cautious, cautious == plain ? SourceOf(cautious, flash, mixture) : Calculated);
        HazardFinding? finding = cautious is { } category ? new(category, HazardCategories.Of(category).Code, step, flash.IsStandIn || cautious != plain) : null;
        return RuleResult.Of([step], finding, unknown);
    }

    private static HazardCategory? CategoryAt(decimal flash, Mixture mixture) => flash switch
    {
        < HighlyFlammableBelow => BoilsEarly(mixture) ? HazardCategory.FlamLiq1 : HazardCategory.FlamLiq2,
        > MayNotSustainAbove and <= FlammableUpTo when mixture.Facts.SustainsCombustion is false => null,
        <= FlammableUpTo => HazardCategory.FlamLiq3,
        <= CombustibleUpTo when mixture.Facts.Scheme == HazardScheme.UnGhs => HazardCategory.FlamLiq4,
        _ => null,
    };

    private static bool BoilsEarly(Mixture mixture) => mixture.Facts.InitialBoilingPoint is { } boiling
        ? boiling <= BoilsEarlyUpTo
        : mixture.All.Any(each => each.Facts.In(HazardClass.FlammableLiquid)?.Category == HazardCategory.FlamLiq1);

    private static RuleStep Step(decimal flash, HazardCategory? category, Citation from)
    {
        decimal limit = category switch
        {
            HazardCategory.FlamLiq1 or HazardCategory.FlamLiq2 => HighlyFlammableBelow,
            HazardCategory.FlamLiq4 => CombustibleUpTo,
            _ => FlammableUpTo,
        };
        string side = limit == HighlyFlammableBelow ? "below" : "at most";
        return new($"Flash point, {side} the limit", flash, limit, "°C", category is not null, category, [], from);
    }

    private static Citation SourceOf(HazardCategory? category, FlashPointValue flash, Mixture mixture) => category switch
    {
        HazardCategory.FlamLiq4 => Combustible,
        null when flash.Degrees <= FlammableUpTo && mixture.Facts.SustainsCombustion is false => Sustained,
        _ => Table,
    };

    private static RuleResult ByIngredients(Mixture mixture)
    {
        List<Contribution> flammable = [.. mixture.Singly(HazardClass.FlammableLiquid)
            .Where(each => each.Facts.In(HazardClass.FlammableLiquid) is not null)
            .OrderByDescending(each => HazardCategories.Of(each.Facts.In(HazardClass.FlammableLiquid)!.Category).Rank)
            .ThenByDescending(each => each.Percent)
            .Select(each => new Contribution(each, each.Percent))];
        if (flammable.Count == 0)
        {
            return RuleResult.Of([], Missing("No ingredient is known as flammable, so no class is assumed."));
        }

        HazardEntry worst = flammable[0].Ingredient.Facts.In(HazardClass.FlammableLiquid)!;
        var step = new RuleStep("No flash point: the most flammable ingredient stands in", flammable.Sum(each => each.Counted), 0m, "%", true, worst.Category, flammable, Table);
        return RuleResult.Of([step], new HazardFinding(worst.Category, worst.Code, step, IsAssumed: true), Missing($"{HazardCategories.Name(worst.Category)} is assumed, as the most flammable ingredient has it; a closed-cup test decides."));
    }

    private static UnknownHazard Missing(string means) =>
        new("The flash point of the mixture is not known.", means, HazardClass.FlammableLiquid, null);
}
