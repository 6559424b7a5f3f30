using MakerStudio.Core.Blending;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>The library of the sample studio, all of it invented.</summary>
internal static class SampleFormulaList
{
    public const string Spray = "room-spray-alcohol";
    public const string Linen = "linen-spray";
    public const string Diffuser = "reed-diffuser";
    public const string Candle = "container-candle";
    public const string Melt = "wax-melt";
    public const string Sachet = "sachet";
    public const string PreBlend = "pre-blend";

    public const string Bottle = "100 mL bottle";
    public const string SmallBottle = "50 mL bottle";
    public const string Jar = "180 g tin";
    public const string Shell = "60 g shell";
    public const string Bag = "40 g bag";

    private const string SprayMethod = "Fragrance first, then DPG, then ethanol. Stir slowly for five minutes, close, label the carboy.";
    private const string WaxMethod = "Melt at 75 °C. Scent at 65 °C, stir two minutes. Pour at 55 °C.";

    public static IReadOnlyList<SampleFormula> All { get; } = [Accord(), Fig(), QuinceSmoke(), LinenSpray(), GreenFig(), HearthCandle(), HearthMelt(), LinenSachet()];

    private static SampleFormula Fig() => new(SampleNames.Fig, Spray,
    [
        new(40, 13, false, "As Ana said it at the table: one and a half parts scent to one of alcohol, by weight",
            new(FigOil, 1.5m, LineBasis.PartsByWeight), new(Ethanol, 1, LineBasis.PartsByWeight)) { Method = SprayMethod },
        new(38, 10, true, "60 % filled the hall for a day; down to 15 %, and DPG to slow it",
            Percent(FigOil, 15), Percent(Dpg, 5), Percent(Ethanol, null)),
        new(34, 16, false, "15 % was too much in the small room; 12 % held four hours",
            Percent(FigOil, 12, "Weigh into the dry carboy"), Percent(Dpg, 5), Percent(Ethanol, null, "Add slowly, carboy on the scale")) { Density = 0.815m },
        new(1, 15, false, "Fragrance costs more since spring: does 11.1 % still hold the hall?",
            Percent(FigOil, 11.10m), Percent(Dpg, 5), Percent(Ethanol, null)) { StaysDraft = true },
    ])
    {
        Sizes =
        [
            new(Bottle, 100, 0.5m, (Bottle100, 1), (Sprayer, 1), (LabelFig, 1), (Carton, 1)),
            new(SmallBottle, 50, 0.3m, (Bottle50, 1), (Sprayer, 1), (LabelHouse, 1)),
        ],
    };

    private static SampleFormula QuinceSmoke() => new(SampleNames.QuinceSmoke, Spray,
    [
        new(37, 14, true, "First try", Percent(QuinceOil, 15), Percent(Dpg, 5), Percent(Ethanol, null)) { Method = SprayMethod },
        new(33, 10, false, "Smoke came too far forward; 12 %, with benzyl benzoate to round it",
            Percent(QuinceOil, 12), Percent(Dpg, 5), Percent(BenzylBenzoate, 1), Percent(Ethanol, null)) { Density = 0.816m },
    ])
    {
        Sizes = [new(Bottle, 100, 0.5m, (Bottle100, 1), (Sprayer, 1), (LabelQuince, 1), (Carton, 1))],
    };

    private static SampleFormula LinenSpray() => new(LinenYard, Linen,
    [
        new(36, 15, true, "First try",
            Percent(LinenOil, 1.6m), Percent(CedarLeaf, 0.4m), Percent(Polysorbate, 4), Percent(Preservative, 0.8m), Percent(Water, null))
        {
            Method = "Oils into polysorbate, stir until clear. Preservative, then water in four parts. Spot test on white cotton, 24 h.",
        },
        new(30, 11, true, "4 % polysorbate stayed hazy; 8 % is clear at 4 °C",
            Percent(LinenOil, 1.6m), Percent(CedarLeaf, 0.4m), Percent(Polysorbate, 8), Percent(Preservative, 0.8m), Percent(Water, null)) { Density = 1.002m },
    ])
    {
        Sizes = [new(Bottle, 100, 0.5m, (Bottle100, 1), (Sprayer, 1), (LabelHouse, 1))],
    };

    private static SampleFormula GreenFig() => new(SampleNames.GreenFig, Diffuser,
    [
        new(32, 15, false, "26 % climbs five reeds in a day",
            Percent(GreenFigOil, 26), Percent(Dpg, 10), Percent(Dpm, null)) { CureMinHours = 72, CureIdealHours = 336, Density = 0.964m, Method = "Scent into DPG, then the base. Stir, close." },
    ])
    {
        Sizes = [new(Bottle, 100, 0.5m, (Bottle100, 1), (Collar, 1), (Reed, 6), (LabelHouse, 1), (Carton, 1))],
    };

    private static SampleFormula Accord() => new(SampleNames.Accord, PreBlend,
    [
        new(38, 14, false, "Fig by the fire, for candles and melts",
            Percent(FigOil, 64), Percent(CedarLeaf, 20), Percent(BenzylBenzoate, null)) { Method = "Stir, close, fill the jar to the shoulder." },
    ]);

    private static SampleFormula HearthCandle() => new(HearthFig, Candle,
    [
        new(31, 10, true, "8 % scent of wax sweats least; the accord is 84 % scent",
            OfWax(SoyWax, 100), OfWax(Dye, 0.05m), OfWax(SampleNames.Accord, 9.5m, "At 65 °C")) { Method = WaxMethod },
    ])
    {
        Sizes = [new(Jar, 180, 1, (Tin, 1), (Wick, 1), (LabelHouse, 1))],
    };

    private static SampleFormula HearthMelt() => new(HearthFig, Melt,
    [
        new(31, 12, true, "No wick, so a little more scent: 9 % of wax",
            OfWax(SoyWax, 100), OfWax(SampleNames.Accord, 11, "At 65 °C")) { Method = WaxMethod },
    ])
    {
        Sizes = [new(Shell, 60, 0.5m, (Clamshell, 1), (LabelHouse, 1))],
    };

    private static SampleFormula LinenSachet() => new(LinenYard, Sachet,
    [
        new(29, 16, false, "Scent 4 % of what is dry",
            Parts(Orris, 8), Parts(LinenOil, 3), Parts(Bergamot, 1), Parts(SampleNames.Lavender, 92)) { Method = "Oils into the powder, rub in, then the flowers. Seal, shake every third day." },
    ])
    {
        Sizes = [new(Bag, 40, 0.5m, (Muslin, 1), (LabelHouse, 1))],
    };

    private static SampleFormulaLine Percent(string material, decimal? amount, string? method = null) => new(material, amount, LineBasis.PercentByWeight, method);

    private static SampleFormulaLine OfWax(string material, decimal amount, string? method = null) => new(material, amount, LineBasis.PercentOfWax, method);

    private static SampleFormulaLine Parts(string material, decimal amount) => new(material, amount, LineBasis.PartsByWeight);
}
