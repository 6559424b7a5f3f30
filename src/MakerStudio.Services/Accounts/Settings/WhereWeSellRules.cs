using FluentValidation;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Voc;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Accounts;

/// <summary>Shape and range of <see cref="SetWhereWeSell"/>.</summary>
public sealed class SetWhereWeSellValidator : AbstractValidator<SetWhereWeSell>
{
    private const int MostLines = 100;

    public SetWhereWeSellValidator()
    {
        RuleFor(m => m.Scheme).NotNull().WithMessage("Choose the rules your labels follow.").IsInEnum().WithMessage("Choose the rules from the list.");
        RuleForEach(m => m.VocLimits).Must(key => key is not null && VocLimits.Find(key) is not null).WithMessage("This VOC limit is not in the table. Choose from the list.");
        RuleFor(m => m.AllergenPercent).Must(p => p is null or (> 0 and <= 100)).WithMessage("The threshold is above 0 and up to 100 %. Leave it empty where your market asks for none.");
        RuleFor(m => m.UfiEntity).IsInEnum().WithMessage("Choose whose number it is from the list.");
        RuleFor(m => m.UfiNumber).Custom((number, context) =>
        {
            if (context.InstanceToValidate.UfiEntity is not { } entity)
            {
                if (!string.IsNullOrWhiteSpace(number))
                {
                    context.AddFailure("Whose number is this? Choose company key or the country of the VAT number.");
                }
            }
            else if (Enum.IsDefined(entity) && !UfiCode.TryEncode(entity, number, 0, out _, out var why))
            {
                context.AddFailure(why);
            }
        });
        RuleFor(m => m.SubstanceLimits).Must(lines => lines.Count <= MostLines).WithMessage($"At most {MostLines} limits of your own are kept.");
        RuleForEach(m => m.SubstanceLimits).SetValidator(new SubstanceLimitLineValidator());
        RuleFor(m => m.FlammableLimits).Must(lines => lines.Count <= MostLines).WithMessage($"At most {MostLines} limits of your own are kept.");
        RuleForEach(m => m.FlammableLimits).SetValidator(new FlammableLimitLineValidator());
    }
}

public sealed class SubstanceLimitLineValidator : AbstractValidator<SubstanceLimitLine>
{
    public SubstanceLimitLineValidator()
    {
        RuleFor(l => l.Name).OneLine("The name", 160).NotEmpty().WithMessage("Which substance or group is limited? Type its name, or take the row out.");
        RuleFor(l => l.Cas).NotEmpty().WithMessage("Type the CAS number; several of a group apart by commas.").Custom((text, context) =>
        {
            foreach (var typed in CasList.Of(text))
            {
                if (!CasNumber.TryParse(typed, out _, out var why))
                {
                    context.AddFailure($"{typed}: {why}");
                }
            }
        });
        RuleFor(l => l.Amendment).OneLine("The amendment", 20).NotEmpty().WithMessage("By which amendment of the standards, or by whom? For example 51, or “own”.");
        RuleFor(l => l.Categories).NotEmpty().WithMessage("Add at least one category with its limit.")
            .Must(lines => lines.Select(c => Core.FragranceLimits.FragranceCategories.KeyOf(c.Category)).OfType<string>().GroupBy(key => key).All(g => g.Count() == 1))
            .WithMessage("A category stands here twice. Keep one row of it.");
        RuleForEach(l => l.Categories).SetValidator(new CategoryLineValidator());
    }
}

public sealed class FlammableLimitLineValidator : AbstractValidator<FlammableLimitLine>
{
    /// <summary>A hundred cubic metres, or tonnes: beyond any studio.</summary>
    private const decimal Largest = 100_000m;

    /// <summary>Kept to the milligram, or to the microlitre.</summary>
    private const int MostDecimals = 6;

    public FlammableLimitLineValidator()
    {
        RuleFor(l => l.Name).OneLine("The name", 160).NotEmpty().WithMessage("Whose limit is this, and for which place? For example “Insurer, whole studio”.");
        RuleFor(l => l.Counts).NotEmpty().WithMessage("Choose which categories count towards it.");
        RuleForEach(l => l.Counts).IsInEnum().WithMessage("Choose categories from the list.");
        RuleFor(l => l.Measure).IsInEnum().WithMessage("Choose litres or kilograms.");
        RuleFor(l => l.Most).NotNull().WithMessage("How much is allowed?")
            .Must(m => m is null or (> 0 and <= Largest)).WithMessage(_ => $"A limit is above 0 and up to {Largest:N0}.")
            .Must(m => m is not { } most || decimal.Round(most, MostDecimals) == most).WithMessage($"Type at most {MostDecimals} decimals.");
        RuleFor(l => l.Citation).MaximumLength(200);
    }
}

/// <summary>Several CAS numbers in one field.</summary>
internal static class CasList
{
    public static IReadOnlyList<string> Of(string? typed) =>
        [.. (typed ?? "").Split([',', ';', ' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Distinct()];
}
