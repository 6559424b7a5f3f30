using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Aspiration: the shares of Asp. Tox. 1 ingredients add up to 10 % and the liquid is thin, at most 20.5 mm²/s at
/// 40 °C. An unmeasured viscosity counts as thin. Where two layers form, each is to be judged as a mixture of its own.
/// </summary>
public sealed class AspirationHazard : HazardRule
{
    /// <summary>Kinematic viscosity in mm²/s at 40 °C up to which a liquid can be drawn into the lungs.</summary>
    public const decimal ThinUpTo = 20.5m;

    private const decimal LimitPercent = 10m;
    private const decimal CountsFromPercent = 1m;

    private static readonly Citation Text = new("CLP Annex I, 3.10.3.3.1", DataStatus.Memory);

    public override string Key => "aspiration";

    public override string Title => "Aspiration hazard";

    public override string AppliesTo => "A liquid with Asp. Tox. 1 ingredients from 1 %.";

    public override IReadOnlyList<Citation> Sources => [Text];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Aspiration];

    public override WorkedExample Example => new(
        "6 % limonene + 4 % alpha-pinene reach 10 % in a liquid of 5.0 mm²/s",
        WorkedExample.Of(("d-limonene", 6m, "Asp. Tox. 1 H304"), ("alpha-pinene", 4m, "Asp. Tox. 1 H304")) with { KinematicViscosity = 5.0m },
        ["Asp. Tox. 1"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Contribution> from = [.. mixture.ToAdd(HazardClass.Aspiration)
            .Where(each => each.Facts.In(HazardClass.Aspiration) is not null && each.Percent >= CountsFromPercent)
            .Select(each => new Contribution(each, each.Percent))];
        if (mixture.Facts.Form == PhysicalForm.Solid || from.Count == 0)
        {
            return RuleResult.None;
        }

        decimal? viscosity = mixture.Facts.KinematicViscosity;
        decimal sum = from.Sum(each => each.Counted);
        bool isEnough = Reaches(sum, LimitPercent);
        bool isThin = viscosity is null or <= ThinUpTo;
        var step = new RuleStep("Σ Asp. Tox. 1, in a liquid of at most 20.5 mm²/s at 40 °C", sum, LimitPercent, "%", isEnough && isThin, HazardCategory.AspTox1, from, Text);
        HazardFinding? finding = step.IsReached ? new(HazardCategory.AspTox1, "H304", step, viscosity is null) : null;
        return RuleResult.Of([step], finding, isEnough && viscosity is null
            ? [new("The viscosity at 40 °C is not known.", "The liquid is taken as thin and gets H304; a measured value above 20.5 mm²/s would lift it.", HazardClass.Aspiration, null)]
            : []);
    }
}
