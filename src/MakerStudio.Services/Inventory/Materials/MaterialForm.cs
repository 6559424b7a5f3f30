using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>What is typed about a material, new or known. Forms bind to it.</summary>
public record MaterialForm : StudioRequest
{
    public string? Name { get; set; }
    public MaterialKind? Kind { get; set; }
    public string? Cas { get; set; }
    public StockUnit StockedIn { get; set; }

    /// <summary>g/mL at <see cref="DensityAtCelsius"/>.</summary>
    public decimal? Density { get; set; }
    public decimal? DensityAtCelsius { get; set; }
    public decimal? AlcoholValue { get; set; }
    public AlcoholBasis? AlcoholBasis { get; set; }
    public decimal? FlashPointCelsius { get; set; }

    /// <summary>Whole days, as the two that follow.</summary>
    public decimal? ShelfLifeDays { get; set; }
    public decimal? LifeAfterOpeningDays { get; set; }

    /// <summary>Grams, or pieces.</summary>
    public decimal? ReorderPoint { get; set; }

    /// <summary>Grams, or pieces, kept for a late delivery or a busy week.</summary>
    public decimal? SafetyStock { get; set; }

    /// <summary>Whole days an order is to last beyond its lead time.</summary>
    public decimal? OrderCoverDays { get; set; }

    /// <summary>What 20 drops weigh, g.</summary>
    public decimal? TwentyDropsGrams { get; set; }
    public string? Notes { get; set; }
    public List<PaperKind> RequiredPapers { get; set; } = [];
    public List<SupplierLine> Suppliers { get; set; } = [];

    /// <summary>A copy that shares no list with this one.</summary>
    public T Copy<T>()
        where T : MaterialForm =>
        (T)(this with { RequiredPapers = [.. RequiredPapers], Suppliers = [.. Suppliers.Select(s => s with { })] });
}

/// <summary>Where a material is bought. A name not known yet becomes a new supplier.</summary>
public sealed record SupplierLine
{
    /// <summary>Tells two rows of equal content apart on a page; never kept.</summary>
    [JsonIgnore]
    public Guid Row { get; init; } = Guid.CreateVersion7();

    public string? Name { get; set; }

    /// <summary>The supplier's own code for the material.</summary>
    public string? Code { get; set; }

    /// <summary>Whole days from ordering to having it here.</summary>
    public decimal? LeadTimeDays { get; set; }

    /// <summary>How it is packed: "5 kg drum".</summary>
    public string? PackNote { get; set; }

    /// <summary>The least they sell, in grams or pieces; null when any amount, or not known.</summary>
    public decimal? Minimum { get; set; }

    /// <summary>They sell whole packs of this, grams or pieces.</summary>
    public decimal? Pack { get; set; }
}

/// <summary>Shape and range of <see cref="MaterialForm"/>; new and changed materials share it.</summary>
public sealed class MaterialFormValidator : AbstractValidator<MaterialForm>
{
    public const int LongestName = 120;
    public const int LongestNotes = 4000;
    public const int MostSuppliers = 20;

    /// <summary>Ten years; longer is no date anybody keeps.</summary>
    public const int LongestDays = 3650;

    /// <summary>A tonne in grams, a million pieces.</summary>
    public const decimal LargestReorderPoint = 1_000_000m;

    /// <summary>House range for a temperature at which a density is stated.</summary>
    private const decimal ColdestDensity = -20m, WarmestDensity = 100m;

    /// <summary>House range of a flash point, °C: wide around any liquid or wax on the shelf.</summary>
    private const decimal LowestFlash = -60m, HighestFlash = 600m;

    /// <summary>Twenty drops from 1 mg to 100 mg a drop and beyond any dropper: g.</summary>
    private const decimal LeastDrops = 0.02m, MostDrops = 5m;

    public MaterialFormValidator()
    {
        RuleFor(m => m.Name).OneLine("The name", LongestName).NotEmpty().WithMessage("A material needs a name.");
        RuleFor(m => m.Kind).NotNull().WithMessage("Choose what kind of material this is.").IsInEnum().WithMessage("Choose a kind from the list.");
        RuleFor(m => m.StockedIn).IsInEnum().WithMessage("Choose grams or each.");
        RuleFor(m => m.Cas).Custom((text, context) =>
        {
            if (!string.IsNullOrWhiteSpace(text) && !CasNumber.TryParse(text, out _, out var why))
            {
                context.AddFailure(why);
            }
        });
        Physics();
        RuleFor(m => m.ShelfLifeDays).Must(IsDays).WithMessage(_ => $"Shelf life is a whole number of days, from 1 to {LongestDays:N0}.");
        RuleFor(m => m.LifeAfterOpeningDays).Must(IsDays).WithMessage(_ => $"Life after opening is a whole number of days, from 1 to {LongestDays:N0}.");
        RuleFor(m => m.ReorderPoint).InclusiveBetween(0, LargestReorderPoint).WithMessage(_ => $"The reorder point is from 0 to {LargestReorderPoint:N0}.")
            .Must((form, point) => IsStockable(point, form.StockedIn))
            .WithMessage(NotStockable);
        RuleFor(m => m.SafetyStock).InclusiveBetween(0, LargestReorderPoint).WithMessage(_ => $"The safety stock is from 0 to {LargestReorderPoint:N0}.")
            .Must((form, stock) => IsStockable(stock, form.StockedIn)).WithMessage(NotStockable);
        RuleFor(m => m.OrderCoverDays).Must(IsDays).WithMessage(_ => $"An order lasts a whole number of days, from 1 to {LongestDays:N0}.");
        RuleFor(m => m.Notes).SeveralLines("The note", LongestNotes);
        RuleForEach(m => m.RequiredPapers).IsInEnum().WithMessage("Choose papers from the list.");
        RuleFor(m => m.Suppliers).Must(s => s.Count <= MostSuppliers).WithMessage(_ => $"At most {MostSuppliers} suppliers are kept for one material.")
            .Must(AreDifferent).WithMessage("The same supplier stands here twice. Keep one line of it.");
        RuleForEach(m => m.Suppliers).SetValidator(new SupplierLineValidator());
        RuleFor(m => m.Suppliers).Custom((lines, context) =>
        {
            foreach (var (field, amount) in lines.SelectMany((l, i) => new[] { ($"Suppliers[{i}].Minimum", l.Minimum), ($"Suppliers[{i}].Pack", l.Pack) }))
            {
                if (!IsStockable(amount, context.InstanceToValidate.StockedIn))
                {
                    context.AddFailure(field, NotStockable(context.InstanceToValidate));
                }
            }
        });
    }

    internal static bool IsDays(decimal? days) => days is null || (days is >= 1 and <= LongestDays && decimal.IsInteger(days.Value));

    private void Physics()
    {
        RuleFor(m => m.Density).Must(d => d is null || Core.Quantities.Density.IsPossible(d.Value))
            .WithMessage(_ => $"A density lies between {Core.Quantities.Density.Lowest} and {Core.Quantities.Density.Highest} g/mL. Sheets in kg/m³ need dividing by 1,000.");
        RuleFor(m => m.DensityAtCelsius).InclusiveBetween(ColdestDensity, WarmestDensity).WithMessage(_ => $"A density is stated at {ColdestDensity:0} to {WarmestDensity:0} °C.")
            .Must((form, at) => form.Density is null || at is not null).WithMessage("At which temperature? Sheets usually say 20 °C.")
            .Must((form, at) => form.Density is not null || at is null).WithMessage("There is a temperature but no density.");
        RuleFor(m => m.AlcoholBasis).Must((form, basis) => form.AlcoholValue is null || basis is not null)
            .WithMessage("Is this % vol, % by weight or US proof? 90 US proof is 45 % vol.").IsInEnum().WithMessage("Choose % vol, % by weight or US proof.");
        RuleFor(m => m.AlcoholValue).Must((form, value) => value is null || form.AlcoholBasis is not { } basis || AlcoholStrength.IsPossible(value.Value, basis))
            .WithMessage("A percentage runs from 0 to 100, US proof from 0 to 200.")
            .Must((form, value) => value is not null || form.AlcoholBasis is null).WithMessage("There is a basis but no number. Type the number, or choose “not stated”.");
        RuleFor(m => m.FlashPointCelsius).InclusiveBetween(LowestFlash, HighestFlash).WithMessage(_ => $"A flash point lies between {LowestFlash:0} and {HighestFlash:0} °C. Sheets in °F: (°F − 32) ÷ 1.8.");
        RuleFor(m => m.TwentyDropsGrams).InclusiveBetween(LeastDrops, MostDrops).WithMessage(_ => $"Twenty drops weigh between {LeastDrops} and {MostDrops} g.")
            .Must((form, grams) => grams is null || form.StockedIn == StockUnit.Gram).WithMessage("Only what is stocked in grams has drops.");
    }

    private static string NotStockable(MaterialForm form) =>
        form.StockedIn == StockUnit.Each ? "Pieces are whole: type a whole number." : "Stock is kept to 0.001 g: type at most 3 decimals.";

    private static bool IsStockable(decimal? point, StockUnit unit) =>
        point is null || decimal.IsInteger(unit == StockUnit.Each ? point.Value : point.Value * Mass.MilligramsPerGram);

    private static bool AreDifferent(List<SupplierLine> lines)
    {
        var names = lines.Select(s => s.Name?.Trim() ?? "").Where(n => n.Length > 0).ToList();
        return names.Distinct(StringComparer.OrdinalIgnoreCase).Count() == names.Count;
    }
}

public sealed class SupplierLineValidator : AbstractValidator<SupplierLine>
{
    public SupplierLineValidator()
    {
        RuleFor(s => s.Name).OneLine("The supplier’s name", 120).NotEmpty().WithMessage("Whose line is this? Type the supplier’s name, or take the line out.");
        RuleFor(s => s.Code).OneLine("The supplier’s code", 60);
        RuleFor(s => s.PackNote).OneLine("The pack note", 120);
        RuleFor(s => s.LeadTimeDays).Must(d => d is null || (d is >= 0 and <= 730 && decimal.IsInteger(d.Value))).WithMessage("Lead time is a whole number of days, from 0 to 730.");
        RuleFor(s => s.Minimum).Must(IsAmount).WithMessage(_ => $"The least they sell is above 0 and at most {MaterialFormValidator.LargestReorderPoint:N0}.");
        RuleFor(s => s.Pack).Must(IsAmount).WithMessage(_ => $"A pack is above 0 and at most {MaterialFormValidator.LargestReorderPoint:N0}.");
    }

    private static bool IsAmount(decimal? amount) => amount is null or (> 0 and <= MaterialFormValidator.LargestReorderPoint);
}
