using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Advice;

/// <summary>What a formula's substance is to the rules: some speak of liquids only.</summary>
public enum ProductForm
{
    Liquid,
    Wax,
    Dry,
}

/// <summary>A formula and what physics made of it: all that a rule of advice looks at. Shares are by weight.</summary>
public sealed class AdviceBasis
{
    /// <summary>
    /// Share from which water or alcohol counts as put in, 0.5 % of the total; below, it came with a material. Own limit.
    /// </summary>
    public const double TraceShare = 0.005;

    /// <summary>
    /// % vol of alcohol and water by themselves below which water carries the scent rather than alcohol: colognes are
    /// made from about 70 % vol (common practice, no source).
    /// </summary>
    public const double CarriesScentPercentVolume = 70;

    /// <summary>Places to which shares are compared with limits, so that the last digit of a sum decides nothing.</summary>
    internal const int ShareDecimals = 6;

    /// <summary>Limonene in a material from which it counts as citrus; own limit.</summary>
    private const double CitrusFromLimonene = 0.30;

    /// <summary>Places to which % vol are compared, so that 95 stays 95 after conversion.</summary>
    private const int VolumeDecimals = 2;

    /// <summary>By the line itself: what a pre-blend is made of shares that line's id.</summary>
    private readonly Dictionary<AssessedLine, MixtureLine> _physical = new(ReferenceEqualityComparer.Instance);

    /// <param name="mixture">Of this formula, by <see cref="FormulaMixture"/>.</param>
    /// <param name="flashPoint">Null where it was not asked for; the lines' own stand in.</param>
    /// <param name="isBeingReleased">Whether this is the version somebody is about to release.</param>
    /// <exception cref="ArgumentException">The mixture is of another formula.</exception>
    public AdviceBasis(
        AssessedFormula formula,
        Mixture mixture,
        AlcoholContent alcohol,
        DensityResult density,
        FlashPointResult? flashPoint = null,
        bool isBeingReleased = false)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(mixture);
        ArgumentNullException.ThrowIfNull(alcohol);
        Formula = formula;
        Density = density;
        FlashPoint = flashPoint;
        IsBeingReleased = isBeingReleased;
        Lines = [.. formula.Lines.Where(line => line.Fraction > 0)];
        Match(mixture);
        Load = ScentLoad.Of(formula);
        Scent = [.. Lines.Where(line => ScentLoad.ShareOf(line.Material) > 0)];
        Form = Load.Basis switch { ScentLoad.Wax => ProductForm.Wax, ScentLoad.DryWeight => ProductForm.Dry, _ => ProductForm.Liquid };
        Ethanol = alcohol.PercentMass / 100;
        Water = mixture.Water;
        Citrus = [.. Lines.Where(IsCitrus)];
        Propanol = Lines.Sum(line => (double)line.Fraction * ShareIn(line, Known.Propanol));
        Vanillin = Lines.Sum(line => (double)line.Fraction * VanillinIn(line));
        AlcoholPercentVolume = alcohol.AlcoholPart is EthanolStrength part ? Math.Round(part.PercentVolume, VolumeDecimals) : null;
        AddedWater = Lines.Where(line => line.Material.Strength is null).Sum(line => (double)line.Fraction * _physical[line].Water);
    }

    public AssessedFormula Formula { get; }

    /// <summary>Those with mass in them, in the order of addition.</summary>
    public IReadOnlyList<AssessedLine> Lines { get; }

    /// <summary>Lines that bring scent.</summary>
    public IReadOnlyList<AssessedLine> Scent { get; }

    /// <summary>Lines of citrus oil, or rich in limonene.</summary>
    public IReadOnlyList<AssessedLine> Citrus { get; }

    public ScentLoad Load { get; }

    public ProductForm Form { get; }

    public DensityResult Density { get; }

    public FlashPointResult? FlashPoint { get; }

    public bool IsBeingReleased { get; }

    /// <summary>0 to 1.</summary>
    public double Ethanol { get; }

    /// <summary>Of isopropanol, 0 to 1.</summary>
    public double Propanol { get; }

    /// <summary>Vanillin and ethyl vanillin as far as the papers give them, 0 to 1.</summary>
    public double Vanillin { get; }

    /// <summary>Vanillin's share of the scent, 0 to 1: what the trade's figures for browning are shares of.</summary>
    public double VanillinOfScent => Vanillin == 0 ? 0 : Math.Min(1, Vanillin / Math.Max((double)Load.OfTotal, Vanillin));

    /// <summary>All of it, what came in with the alcohol too, 0 to 1.</summary>
    public double Water { get; }

    /// <summary>Of water that did not come in with an alcohol of stated strength, 0 to 1.</summary>
    public double AddedWater { get; }

    /// <summary>Strength of the ethanol and water by themselves, % vol at 20 °C; null without ethanol.</summary>
    public double? AlcoholPercentVolume { get; }

    /// <summary>
    /// Whether water carries the scent: more of it than of other carriers beside alcohol, and too little alcohol with
    /// it to hold scent.
    /// </summary>
    public bool IsCarriedByWater => Water > TraceShare
        && !(AlcoholPercentVolume >= CarriesScentPercentVolume)
        && Math.Round(Water, ShareDecimals) >= Math.Round(1 - Water - Ethanol - (double)Load.OfTotal, ShareDecimals);

    /// <summary>The same worked out from the formula alone.</summary>
    public static AdviceBasis Of(AssessedFormula formula, bool isBeingReleased = false)
    {
        const decimal referenceCelsius = 20;
        ArgumentNullException.ThrowIfNull(formula);
        Mixture mixture = FormulaMixture.Of(formula);
        DensityResult density = MixtureVolume.Of(mixture, new Celsius(referenceCelsius), formula.Measured.Density);
        return new(
            formula,
            mixture,
            AlcoholContent.Of(mixture, density is DensityResult.Known known ? known.Density : null),
            density,
            Core.FlashPoints.FlashPoint.Of(mixture, formula.Measured.FlashPoint),
            isBeingReleased);
    }

    /// <summary>Share of a substance in a line, 0 to 1: by its CAS number on the papers, else the whole line by its name.</summary>
    internal double ShareIn(AssessedLine line, Known substance)
    {
        IReadOnlyList<Constituent> parts = PartsOf(line);
        return parts.Count == 0 && substance.IsNamedIn(line.Material.Name)
            ? 1
            : parts.Sum(part => substance.Is(part.Cas) ? part.MassFraction : 0);
    }

    /// <summary>A mixture stands in the order of ids, and lines that share one keep their order.</summary>
    private void Match(Mixture mixture)
    {
        AssessedLine[] inOrder = [.. Lines.OrderBy(line => line.LineId)];
        if (inOrder.Length != mixture.Lines.Count)
        {
            throw new ArgumentException("The mixture is of another formula.", nameof(mixture));
        }

        for (int i = 0; i < inOrder.Length; i++)
        {
            _physical.TryAdd(inOrder[i], mixture.Lines[i]);
        }
    }

    internal double VanillinIn(AssessedLine line) =>
        (double?)line.Material.VanillinPercent / 100 ?? PartsOf(line).Sum(part => Known.Vanillin.Is(part.Cas) ? part.MassFraction : 0);

    internal IReadOnlyList<Constituent> PartsOf(AssessedLine line) =>
        _physical[line].Constituents;

    private bool IsCitrus(AssessedLine line) => line.Material.HoldsCitrus || ShareIn(line, Known.Limonene) >= CitrusFromLimonene;

    internal bool HoldsAntioxidant(AssessedLine line) =>
        Known.Antioxidant.IsNamedIn(line.Material.Name)
        || PartsOf(line).Any(part => Known.Antioxidant.Is(part.Cas) || Known.Antioxidant.IsNamedIn(part.Name));

    internal bool HoldsWaterOrAlcohol(AssessedLine line) =>
        ShareIn(line, Known.Propanol) > 0 || _physical[line].Water + _physical[line].Ethanol > 0;

    /// <summary>Whether a line stands in the way of the mixture's density.</summary>
    internal bool LacksDensity(AssessedLine line) => _physical[line] is { Density: null } physical
        && 1 - physical.Water - physical.Ethanol > MixtureLine.RoundingShare;

    public IEnumerable<AssessedLine> OfKind(MaterialKind kind) => Lines.Where(line => line.Material.Kind == kind);

    /// <summary>Share of the total, 0 to 1.</summary>
    public decimal ShareOf(MaterialKind kind) => OfKind(kind).Sum(line => line.Fraction);
}
