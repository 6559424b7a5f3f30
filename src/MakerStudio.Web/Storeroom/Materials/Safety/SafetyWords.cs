using System.Globalization;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Storeroom;

/// <summary>How a safety sheet reads on a page.</summary>
public static class SafetyWords
{
    /// <summary>To stand beside everything offered from the built-in table.</summary>
    public const string FromTheTable = "From the built-in table, from memory; the supplier’s sheet overrules.";

    /// <summary>What was understood of typed classes, in the names of the regulation; null where nothing was typed or nothing is classified.</summary>
    public static string? ReadAs(string? classes)
    {
        var read = ClassificationText.Parse(classes);
        return read.Entries.Count == 0 ? null : string.Join(" · ", read.Entries.Select(e => HazardCategories.Of(e.Category).Name));
    }

    /// <summary>"5–10 %", "10 %" where both ends are one, "up to 1 %" from zero.</summary>
    public static string Range(SubstanceLine line) => (line.LowPercent, line.HighPercent) switch
    {
        ({ } low, { } high) when low == high => $"{Written.AsStated(low)} %",
        (0m, { } high) => $"up to {Written.AsStated(high)} %",
        ({ } low, { } high) => $"{Written.AsStated(low)}–{Written.AsStated(high)} %",
        _ => "–",
    };

    /// <summary>The hazards beside the classes, in one sentence; empty where there are none.</summary>
    public static string More(HazardLines h) => string.Join("; ", new[]
    {
        h.Limits is null ? null : $"limits {h.Limits}",
        With("oral", h.OralMgPerKg, "mg/kg"), With("dermal", h.DermalMgPerKg, "mg/kg"),
        With("vapour", h.VapourMgPerLitre, "mg/L"), With("mist", h.MistMgPerLitre, "mg/L"),
        h.AcuteM is { } acute ? $"M {Written.AsStated(acute)} acute" : null, h.ChronicM is { } chronic ? $"M {Written.AsStated(chronic)} chronic" : null,
    }.OfType<string>());

    /// <summary>What of home fragrance a category is for; empty where it is for none.</summary>
    public static string Use(string? category) => FragranceCategories.Find(category ?? "")?.HomeFragrance ?? "";

    /// <summary>"SDS edition 4, 3 Feb 2026", or what is missing of it.</summary>
    public static string Source(SetSafety safety) => (safety.SheetEdition, safety.SheetDate) switch
    {
        (null, null) => "Typed without naming a sheet.",
        (null, { } date) => $"From the SDS of {Written.Day(date)}.",
        ({ } edition, null) => $"From the SDS, {edition}.",
        ({ } edition, { } date) => $"From the SDS, {edition}, {Written.Day(date)}.",
    };

    /// <summary>A paper of the material that is newer than the one the facts are from; null where none is.</summary>
    public static PaperRow? Newer(SetSafety safety, IEnumerable<PaperRow> papers, PaperKind kind)
    {
        var from = kind == PaperKind.Sds ? safety.SheetDate : safety.CertificateIssuedOn;
        return papers.Where(p => p.Kind == kind && p.LotId is null && p.EditionDate is not null).MaxBy(p => p.EditionDate) is { } newest && from < newest.EditionDate ? newest : null;
    }

    public static string Percent(decimal? value) => value is { } v ? $"{Written.AsStated(v)} %" : "–";

    private static string? With(string route, decimal? value, string unit) =>
        value is { } v ? $"{route} {QuantityFormat.Editable(v, CultureInfo.CurrentCulture)} {unit}" : null;
}
