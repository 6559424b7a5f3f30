using MakerStudio.Core.Advice;
using MakerStudio.Core.Allergens;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;
using Mixture = MakerStudio.Core.Blending.Mixture;

namespace MakerStudio.Core.Assessing;

/// <summary>
/// All that the program can say of a formula: what the liquid or wax is, and what follows from it. A working draft;
/// what it cannot say stands in <see cref="Unknown"/> with what that means.
/// </summary>
/// <param name="Typed">As it was handed in.</param>
/// <param name="Formula">The same with its shares brought to a whole.</param>
/// <param name="Density">At 20 °C.</param>
/// <param name="Flash">Null for what is not a liquid and was not tested.</param>
/// <param name="Facts">What the rules of classification were asked about.</param>
/// <param name="Label">By CLP; null where the studio's scheme is another.</param>
/// <param name="UsLabel">By the FHSA; null where the studio's scheme is another.</param>
public sealed record Assessment(
    AssessedFormula Typed,
    AssessedFormula Formula,
    MarketChoices Choices,
    DensityResult Density,
    AlcoholContent Alcohol,
    FlashPointResult? Flash,
    MixtureFacts Facts,
    HazardsFound Hazards,
    HazardLabel? Label,
    FhsaLabel? UsLabel,
    VocContent Voc,
    FragranceUse Fragrance,
    DeclaredAllergens Allergens,
    IReadOnlyList<AdviceGiven> Advice)
{
    private const decimal ReferenceCelsius = 20;

    /// <summary>What could not be said, or was taken for want of a fact. Parts carry their own; here are all of them, gathered anew at each call.</summary>
    public IReadOnlyList<NotKnown> Unknown => AssessmentUnknowns.Of(this);

    /// <summary>Null where nobody knows it.</summary>
    public Density? DensityAt20 => Density is DensityResult.Known known ? known.Density : null;

    /// <summary>False where the shares had to be brought to a whole.</summary>
    public bool AddsUp => AssessmentUnknowns.AddsUp(Typed);

    /// <param name="isBeingReleased">Whether this is the version somebody is about to release: some advice stands only then.</param>
    /// <returns>Null where no line has mass: there is nothing to assess.</returns>
    /// <exception cref="ArgumentException">A share is below zero, or a stated one outside 0 to 100 %.</exception>
    public static Assessment? Of(AssessedFormula formula, MarketChoices choices, bool isBeingReleased = false)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(choices);
        if (formula.Lines.Any(line => line.Fraction < 0))
        {
            throw new ArgumentException("A line's share is 0 or more.", nameof(formula));
        }

        return formula.Lines.Any(line => line.Fraction > 0) ? OfWhole(formula, AsWhole(formula), choices, isBeingReleased) : null;
    }

    private static Assessment OfWhole(AssessedFormula typed, AssessedFormula formula, MarketChoices choices, bool isBeingReleased)
    {
        Mixture mixture = FormulaMixture.Of(formula);
        DensityResult density = MixtureVolume.Of(mixture, new Celsius(ReferenceCelsius), formula.Measured.Density);
        AlcoholContent alcohol = AlcoholContent.Of(mixture, density is DensityResult.Known known ? known.Density : null);
        FlashPointResult flash = FlashPoint.Of(mixture, formula.Measured.FlashPoint);
        var basis = new AdviceBasis(formula, mixture, alcohol, density, flash, isBeingReleased);
        FlashPointResult? asked = basis.Form == ProductForm.Liquid || formula.Measured.FlashPoint is not null ? flash : null;
        MixtureFacts facts = FormulaHazards.FactsOf(formula, basis, asked, choices.Scheme);
        HazardsFound hazards = HazardAssessment.Of(facts);
        IReadOnlyDictionary<string, SubstanceShare> shares = SubstanceShares.Of(formula);
        bool isUs = choices.Scheme == LabelScheme.UnitedStates;
        return new(
            typed,
            formula,
            choices,
            density,
            alcohol,
            asked,
            facts,
            hazards,
            isUs ? null : HazardLabel.For(hazards, FormulaHazards.SituationOf(formula, choices.Scheme)),
            isUs ? FhsaLabel.For([.. hazards.Findings.Select(finding => finding.Category)], facts.FlashPoint) : null,
            VocContent.Of(formula, choices),
            FragranceUse.Of(formula, choices, shares),
            DeclaredAllergens.Of(formula, choices, shares),
            AdviceRules.Judge(basis));
    }

    /// <summary>Shares to a sum of 1, so that what does not add up yet can be assessed as it stands.</summary>
    private static AssessedFormula AsWhole(AssessedFormula formula)
    {
        if (AssessmentUnknowns.AddsUp(formula))
        {
            return formula;
        }

        decimal sum = formula.Lines.Sum(line => line.Fraction);
        return formula with { Lines = [.. formula.Lines.Select(line => line with { Fraction = line.Fraction / sum })] };
    }
}
