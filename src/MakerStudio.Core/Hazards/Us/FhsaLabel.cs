using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Us;

public enum FhsaBand
{
    /// <summary>Above 150 °F, or nothing known.</summary>
    None,
    Combustible,
    Flammable,
    ExtremelyFlammable,
}

/// <summary>A principal hazard.</summary>
/// <param name="From">Source of the statement; Derived where it was carried over from a class of CLP.</param>
public sealed record FhsaStatement(string Text, Citation From);

/// <summary>
/// Cautionary words of the Federal Hazardous Substances Act for a consumer product: a working draft. The flash point
/// decides the band; the other statements are carried over from the classes by calculation, as the Act has tests and
/// definitions of its own. Example: an ethanol spray of 17 °C reads "WARNING: FLAMMABLE. EYE IRRITANT."
/// </summary>
/// <param name="Signal">"DANGER", "WARNING", "CAUTION" or nothing.</param>
public sealed record FhsaLabel(string? Signal, bool ShowsPoison, FhsaBand Band, IReadOnlyList<FhsaStatement> Statements, IReadOnlyList<string> Unknown)
{
    /// <summary>°C, included: 20 °F in the text.</summary>
    public const decimal ExtremelyFlammableUpTo = -6.7m;

    /// <summary>°C, left out: 100 °F.</summary>
    public const decimal FlammableBelow = 37.8m;

    /// <summary>°C, included: 150 °F.</summary>
    public const decimal CombustibleUpTo = 65.6m;

    public static Citation ExtremelyFlammableSource { get; } = new("16 CFR 1500.3(c)(6)(i)", DataStatus.Read);

    public static Citation BandsSource { get; } = new("16 CFR 1500.3(c)(6)(ii) and (iii)", DataStatus.Memory);

    public static Citation ElementsSource { get; } = new("FHSA section 2(p)(1); 16 CFR 1500.121(a)", DataStatus.Read);

    private static readonly Citation CarriedOver = new("Carried over from the class of CLP; FHSA definitions: 16 CFR 1500.3", DataStatus.Derived);

    private static readonly (HazardCategory[] For, string Signal, string Text)[] ByClass =
    [
        ([HazardCategory.AcuteTox1Oral, HazardCategory.AcuteTox2Oral], "DANGER", "MAY BE FATAL IF SWALLOWED"),
        ([HazardCategory.AcuteTox1Dermal, HazardCategory.AcuteTox2Dermal], "DANGER", "MAY BE FATAL IF ABSORBED THROUGH SKIN"),
        ([HazardCategory.AcuteTox1Inhalation, HazardCategory.AcuteTox2Inhalation], "DANGER", "MAY BE FATAL IF INHALED"),
        ([HazardCategory.SkinCorr1A, HazardCategory.SkinCorr1, HazardCategory.SkinCorr1B, HazardCategory.SkinCorr1C], "DANGER", "CAUSES BURNS"),
        ([HazardCategory.AspTox1], "DANGER", "HARMFUL OR FATAL IF SWALLOWED"),
        ([HazardCategory.AcuteTox3Oral, HazardCategory.AcuteTox4Oral], "WARNING", "HARMFUL IF SWALLOWED"),
        ([HazardCategory.AcuteTox3Dermal, HazardCategory.AcuteTox4Dermal], "WARNING", "HARMFUL IF ABSORBED THROUGH SKIN"),
        ([HazardCategory.AcuteTox3Inhalation, HazardCategory.AcuteTox4Inhalation], "WARNING", "HARMFUL IF INHALED"),
        ([HazardCategory.EyeDam1, HazardCategory.EyeIrrit2], "WARNING", "EYE IRRITANT"),
        ([HazardCategory.SkinIrrit2], "WARNING", "SKIN IRRITANT"),
    ];

    private static readonly HashSet<HazardCategory> HighlyToxic =
    [
        HazardCategory.AcuteTox1Oral, HazardCategory.AcuteTox2Oral, HazardCategory.AcuteTox1Dermal,
        HazardCategory.AcuteTox2Dermal, HazardCategory.AcuteTox1Inhalation, HazardCategory.AcuteTox2Inhalation,
    ];

    /// <summary>Sentence that every label carries when any hazard stands on it.</summary>
    public static string KeepOutOfReach => "Keep out of the reach of children.";

    /// <param name="flashPoint">Closed cup, °C.</param>
    /// <param name="mostlyAbove">
    /// True where at least 99 % of the volume are components with a flash point above the limit of the band: the
    /// mixture then is not of that band, and the next is looked at.
    /// </param>
    public static FhsaBand BandOf(decimal flashPoint, Func<FhsaBand, bool>? mostlyAbove = null)
    {
        FhsaBand[] reached = flashPoint switch
        {
            <= ExtremelyFlammableUpTo => [FhsaBand.ExtremelyFlammable, FhsaBand.Flammable, FhsaBand.Combustible],
            < FlammableBelow => [FhsaBand.Flammable, FhsaBand.Combustible],
            <= CombustibleUpTo => [FhsaBand.Combustible],
            _ => [],
        };
        return reached.FirstOrDefault(band => mostlyAbove?.Invoke(band) is not true);
    }

    /// <param name="flashPoint">Null when not known: the result says so, and no band is stated.</param>
    public static FhsaLabel For(IReadOnlyCollection<HazardCategory> categories, FlashPointValue? flashPoint)
    {
        ArgumentNullException.ThrowIfNull(categories);
        FhsaBand band = flashPoint is null ? FhsaBand.None : BandOf(flashPoint.Degrees);
        var carried = ByClass.Where(row => categories.Any(row.For.Contains)).ToList();
        bool corrosive = carried.Exists(row => row.Text == "CAUSES BURNS");
        List<FhsaStatement> statements =
        [
            .. InWords(band),
            .. carried.Where(row => !(corrosive && row.Text.EndsWith("IRRITANT", StringComparison.Ordinal))).Select(row => new FhsaStatement(row.Text, CarriedOver)),
        ];
        string?[] signals = [SignalOf(band), .. carried.Select(row => row.Signal)];
        return new(
            ((string[])["DANGER", "WARNING", "CAUTION"]).FirstOrDefault(signals.Contains),
            categories.Any(HighlyToxic.Contains),
            band,
            statements,
            flashPoint switch
            {
                null => ["The flash point is not known, so no statement on fire is made: a closed-cup test decides."],
                { IsMeasured: false } => ["The flash point is calculated: a closed-cup test decides the band."],
                _ => [],
            });
    }

    private static string? SignalOf(FhsaBand band) => band switch
    {
        FhsaBand.ExtremelyFlammable => "DANGER",
        FhsaBand.Flammable => "WARNING",
        FhsaBand.Combustible => "CAUTION",
        _ => null,
    };

    private static IEnumerable<FhsaStatement> InWords(FhsaBand band) => band switch
    {
        FhsaBand.ExtremelyFlammable => [new("EXTREMELY FLAMMABLE", ExtremelyFlammableSource)],
        FhsaBand.Flammable => [new("FLAMMABLE", BandsSource)],
        FhsaBand.Combustible => [new("COMBUSTIBLE", BandsSource)],
        _ => [],
    };
}
