namespace MakerStudio.Services.Exchange;

/// <summary>Names that several parts of the story speak of.</summary>
internal static class SampleNames
{
    public const string FigOil = "Fig fragrance oil";
    public const string QuinceOil = "Quince & Smoke fragrance oil";
    public const string GreenFigOil = "Green Fig fragrance oil";
    public const string LinenOil = "Linen fragrance oil";
    public const string Bergamot = "Bergamot oil";
    public const string CedarLeaf = "Cedar leaf oil";
    public const string Ethanol = "Ethanol 99.5 % vol, denatured";
    public const string Dpg = "DPG";
    public const string Dpm = "DPM, diffuser base";
    public const string BenzylBenzoate = "Benzyl benzoate";
    public const string Polysorbate = "Polysorbate 20";
    public const string Preservative = "Preservative, phenoxyethanol";
    public const string Water = "Purified water";
    public const string SoyWax = "Soy wax";
    public const string Dye = "Candle dye, amber";
    public const string Orris = "Orris root powder";
    public const string Lavender = "Dried lavender";
    public const string Bottle100 = "Bottle 100 mL, amber glass";
    public const string Bottle50 = "Bottle 50 mL, amber glass";
    public const string Sprayer = "Sprayer 24/410, black";
    public const string Collar = "Collar and stopper 28 mm";
    public const string Reed = "Rattan reed 25 cm";
    public const string LabelFig = "Label, Fig 100 mL";
    public const string LabelQuince = "Label, Quince & Smoke 100 mL";
    public const string LabelHouse = "Label, house, to write on";
    public const string Carton = "Carton 100 mL";
    public const string Tin = "Candle tin 200 mL with lid";
    public const string Wick = "Wick, cotton, with sustainer";
    public const string Muslin = "Muslin bag 10 × 14 cm";
    public const string Clamshell = "Melt shell, six cubes";

    public const string Accord = "Hearth accord";
    public const string Fig = "Fig";
    public const string QuinceSmoke = "Quince & Smoke";
    public const string LinenYard = "Linen Yard";
    public const string GreenFig = "Green Fig";
    public const string HearthFig = "Hearth Fig";

    public const string Alder = "Alder Supply";
    public const string Wrenfield = "Wrenfield Aromatics";
    public const string OldMill = "Old Mill Scents";
    public const string Brackwater = "Brackwater Solvents";
    public const string Beaker = "Still & Beaker";
    public const string Tallowby = "Tallowby Waxes";
    public const string Pennel = "Pennel Packaging";
    public const string Lindenhay = "Lindenhay Farm";
}
