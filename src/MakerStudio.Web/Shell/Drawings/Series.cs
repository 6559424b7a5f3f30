using MakerStudio.Core.Materials;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>What a length stands for. Each has its colour and its hatch, the same on every drawing.</summary>
public enum Series
{
    Fragrance, Ethanol, Fixative, Packaging, Labour, Overhead, Waiting,
    Quantity, Warning,
    Left, Fees, Shop, Tax, Accident,
}

public static class SeriesFill
{
    /// <summary>An svg fill; the hatches stand in HatchDefs.</summary>
    public static string Of(Series series) => series switch
    {
        Series.Fragrance => "url(#h-frag)",
        Series.Ethanol => "url(#h-alc)",
        Series.Fixative => "url(#h-fix)",
        Series.Packaging => "url(#h-pack)",
        Series.Labour => "url(#h-lab)",
        Series.Overhead => "url(#h-over)",
        Series.Waiting => "url(#h-wait)",
        Series.Warning => "url(#h-warn)",
        Series.Left => "url(#h-left)",
        Series.Fees => "url(#h-fees)",
        Series.Shop => "url(#h-shop)",
        Series.Tax => "url(#h-tax)",
        Series.Accident => "url(#h-acc)",
        _ => "var(--ink-2)",
    };
}

public static class MaterialSeries
{
    /// <summary>The series a material is drawn in: scent, the body that carries it, what is added to hold or colour it, and what it is put in.</summary>
    public static Series Of(MaterialKind kind) => kind switch
    {
        MaterialKind.FragranceOil or MaterialKind.EssentialOil or MaterialKind.PreBlend => Series.Fragrance,
        MaterialKind.Solvent or MaterialKind.CarrierBase or MaterialKind.Water or MaterialKind.Wax or MaterialKind.DryBotanical => Series.Ethanol,
        _ when MaterialKinds.IsPackaging(kind) => Series.Packaging,
        _ => Series.Fixative,
    };
}
