using FluentValidation;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;

namespace MakerStudio.Services.Inventory;

/// <summary>Shape and range of a safety sheet. What cannot be read is refused with the piece named: it must not be left out unseen.</summary>
public sealed class SetSafetyValidator : AbstractValidator<SetSafety>
{
    public const int LongestNotes = 4000;
    public const int MostSubstances = 200;
    private const int LongestEdition = 40;
    private const int LongestAmendment = 20;
    private const decimal Whole = 100m;
    private static readonly DateOnly Earliest = new(1990, 1, 1);

    public SetSafetyValidator()
    {
        RuleFor(s => s.Hazards).SetValidator(new HazardLinesValidator());
        RuleFor(s => s.SheetEdition).OneLine("The edition", LongestEdition);
        RuleFor(s => s.SheetDate).Must(IsPossible).WithMessage("The date lies before 1990. Type it as it is printed on the sheet.");
        RuleFor(s => s.VolatilePercent).InclusiveBetween(0, Whole).WithMessage("Volatile matter is from 0 to 100 % by weight.");
        RuleFor(s => s.VanillinPercent).InclusiveBetween(0, Whole).WithMessage("Vanillin is from 0 to 100 % by weight.");
        RuleFor(s => s.Notes).SeveralLines("The note", LongestNotes);
        Composition();
        Certificate();
    }

    private void Composition()
    {
        RuleFor(s => s.Composition).Cascade(CascadeMode.Stop)
            .Must(lines => lines.Count <= MostSubstances).WithMessage(_ => $"At most {MostSubstances} substances are kept for one material.")
            .Must(lines => LowSum(lines) <= Whole).WithMessage(s => $"The low ends of the composition add up to {LowSum(s.Composition):0.###} %; more than 100 % cannot be. Look for a range in the wrong unit.");
        RuleForEach(s => s.Composition).SetValidator(new SubstanceLineValidator());
        RuleFor(s => s.Composition).Custom((lines, context) =>
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (line, index) in lines.Select((line, index) => (line, index)))
            {
                if (CasNumber.TryParse(line.Cas, out var cas, out _) && !seen.Add(cas.Text))
                {
                    context.AddFailure($"Composition[{index}].Cas", $"{cas.Text} stands here twice. Put both shares into one row.");
                }
            }
        });
    }

    private void Certificate()
    {
        RuleFor(s => s.CertificateAmendment).OneLine("The amendment", LongestAmendment)
            .Must((s, amendment) => s.CertificateLimits.Count == 0 || !string.IsNullOrWhiteSpace(amendment))
            .WithMessage("Which amendment of the standards is the certificate reckoned by? It is printed on it, for example 51.");
        RuleFor(s => s.CertificateIssuedOn).Must(IsPossible).WithMessage("The date lies before 1990. Type it as it is printed on the certificate.");
        RuleForEach(s => s.CertificateLimits).SetValidator(new CategoryLineValidator());
        RuleFor(s => s.CertificateLimits).Custom((lines, context) =>
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (line, index) in lines.Select((line, index) => (line, index)))
            {
                if (FragranceCategories.KeyOf(line.Category) is { } key && !seen.Add(key))
                {
                    context.AddFailure($"CertificateLimits[{index}].Category", $"Category {key} stands here twice. Keep one row of it.");
                }
            }
        });
    }

    private static bool IsPossible(DateOnly? date) => date is null || date >= Earliest;

    private static decimal LowSum(List<SubstanceLine> lines) => lines.Sum(line => line.StatedPercent ?? line.LowPercent ?? 0);
}

public sealed class SubstanceLineValidator : AbstractValidator<SubstanceLine>
{
    private const int LongestName = 160;
    private const decimal Whole = 100m;

    public SubstanceLineValidator()
    {
        RuleFor(s => s.Name).OneLine("The substance’s name", LongestName).NotEmpty().WithMessage("Which substance is this? Type its name, or take the row out.");
        RuleFor(s => s.Cas).Custom((text, context) =>
        {
            if (!string.IsNullOrWhiteSpace(text) && !CasNumber.TryParse(text, out _, out var why))
            {
                context.AddFailure(why);
            }
        });
        RuleFor(s => s.LowPercent).NotNull().WithMessage("From how many per cent? Type 0 where the sheet says “less than”.")
            .InclusiveBetween(0, Whole).WithMessage("A share is from 0 to 100 %.");
        RuleFor(s => s.HighPercent).NotNull().WithMessage("Up to how many per cent? Type the same number twice where the sheet gives one.")
            .InclusiveBetween(0, Whole).WithMessage("A share is from 0 to 100 %.")
            .Must((s, high) => high is null || s.LowPercent is null || high >= s.LowPercent).WithMessage("The range runs backwards: the low end comes first.");
        RuleFor(s => s.StatedPercent).Must((s, stated) => stated is null || s.LowPercent > s.HighPercent || ((s.LowPercent ?? 0) <= stated && stated <= (s.HighPercent ?? Whole)))
            .WithMessage("The value you were given lies outside the range. Change one of them.");
        RuleFor(s => s.Hazards).SetValidator(new HazardLinesValidator());
    }
}

public sealed class CategoryLineValidator : AbstractValidator<CategoryLine>
{
    public CategoryLineValidator()
    {
        RuleFor(c => c.Category).Must(category => FragranceCategories.KeyOf(category) is not null)
            .WithMessage("There is no such category. They run from 1 to 12; reed diffusers are 10A, sprays 10B, candles and melts 12.");
        RuleFor(c => c.MaxPercent).NotNull().WithMessage("How much is allowed? Type 0 where nothing is.")
            .InclusiveBetween(0, 100).WithMessage("From 0 to 100 % of the finished product can be allowed.");
    }
}

public sealed class HazardLinesValidator : AbstractValidator<HazardLines>
{
    private const int LongestText = 2000;
    private const decimal LargestEstimate = 1_000_000m;

    /// <summary>M-factors are powers of ten (CLP Annex I, 4.1.3.5.5.5); larger ones are not seen.</summary>
    private static readonly decimal[] MFactors = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000];

    public HazardLinesValidator()
    {
        RuleFor(h => h.Classes).SeveralLines("The classes", LongestText).Custom((text, context) =>
        {
            if (ClassificationText.Parse(text).NotRead is { Count: > 0 } notRead)
            {
                context.AddFailure($"Not read: {Quoted(notRead)}. Write each class as the sheet does, apart by semicolons: Flam. Liq. 2 H225; Eye Irrit. 2 H319.");
            }
        });
        RuleFor(h => h.Limits).SeveralLines("The limits", LongestText).Custom((text, context) =>
        {
            if (SpecificLimitText.Parse(text).NotRead is { Count: > 0 } notRead)
            {
                context.AddFailure($"Not read: {Quoted(notRead)}. Write the class and the per cent from which it counts: Skin Sens. 1A 0.01.");
            }
        });
        Estimate(h => h.OralMgPerKg, "mg/kg");
        Estimate(h => h.DermalMgPerKg, "mg/kg");
        Estimate(h => h.VapourMgPerLitre, "mg/L");
        Estimate(h => h.MistMgPerLitre, "mg/L");
        RuleFor(h => h.AcuteM).Must(IsM).WithMessage("An M-factor is 1, 10, 100 and so on.");
        RuleFor(h => h.ChronicM).Must(IsM).WithMessage("An M-factor is 1, 10, 100 and so on.");
    }

    private void Estimate(System.Linq.Expressions.Expression<Func<HazardLines, decimal?>> field, string unit) =>
        RuleFor(field).Must(value => value is null or (> 0 and <= LargestEstimate)).WithMessage($"An estimate is above 0 {unit}. Leave it empty where the sheet gives none.");

    private static bool IsM(decimal? factor) => factor is not { } m || MFactors.Contains(m);

    private static string Quoted(IEnumerable<string> pieces) => string.Join(", ", pieces.Select(piece => $"“{piece}”"));
}
