using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>A part of a safety sheet: its name, how it reads in a comparison, how it is taken over.</summary>
public sealed record SafetyField(string Label, Func<SetSafety, string> Read, Action<SetSafety, SetSafety> Take);

/// <summary>A part in the versions a stale edit knows.</summary>
public sealed record SafetyDifference(SafetyField Field, string Opened, string Theirs, string Yours)
{
    /// <summary>Only they changed it.</summary>
    public bool OnlyTheirs => Opened == Yours;
}

/// <summary>Every part of a safety sheet once, for comparing versions of it.</summary>
public static class SafetyFields
{
    public static IReadOnlyList<SafetyField> All { get; } =
    [
        new("Classes of the whole", s => Read(s.Hazards), (from, to) => to.Hazards = from.Hazards with { }),
        new("Sheet", s => Join(", ", s.SheetEdition, Date(s.SheetDate)), (from, to) => (to.SheetEdition, to.SheetDate) = (from.SheetEdition, from.SheetDate)),
        new("Composition", s => string.Join("\n", s.Composition.Select(Read)), (from, to) => to.Composition = from.Copy().Composition),
        new("Volatile matter", s => Percent(s.VolatilePercent), (from, to) => to.VolatilePercent = from.VolatilePercent),
        new("Vanillin", s => Percent(s.VanillinPercent), (from, to) => to.VanillinPercent = from.VanillinPercent),
        new("Citrus", s => s.HoldsCitrus ? "holds citrus" : "", (from, to) => to.HoldsCitrus = from.HoldsCitrus),
        new("Phthalates", s => Statement(s.PhthalateFree), (from, to) => to.PhthalateFree = from.PhthalateFree),
        new("CMR substances", s => Statement(s.CmrFree), (from, to) => to.CmrFree = from.CmrFree),
        new("Certificate", ReadCertificate, (from, to) => (to.CertificateAmendment, to.CertificateIssuedOn, to.CertificateLimits) = (from.CertificateAmendment, from.CertificateIssuedOn, from.Copy().CertificateLimits)),
        new("Notes", s => s.Notes?.Trim() ?? "", (from, to) => to.Notes = from.Notes),
    ];

    /// <summary>The parts in which the saved version and yours differ, in the order of the form.</summary>
    public static IReadOnlyList<SafetyDifference> Compare(SetSafety opened, SetSafety theirs, SetSafety yours) =>
        [.. All.Select(f => new SafetyDifference(f, f.Read(opened), f.Read(theirs), f.Read(yours))).Where(d => d.Theirs != d.Yours)];

    /// <summary>"none stated" where there is no statement: the three answers of a supplier in words.</summary>
    public static string Statement(bool? free) => free switch { true => "stated free", false => "stated to hold some", _ => "" };

    internal static string WhatChanged(string material, SetSafety before, SetSafety after)
    {
        var changed = All.Where(f => f.Read(before) != f.Read(after)).Select(f => f.Label.ToLowerInvariant()).ToList();
        return !before.IsStated ? $"Wrote down the safety sheet of {material}"
            : changed.Count == 0 ? $"Saved the safety sheet of {material} without a change"
            : $"Changed the safety sheet of {material}: {string.Join(", ", changed)}";
    }

    private static string Read(SubstanceLine line) => Join("; ",
        line.Name?.Trim(), line.Cas?.Trim(), $"{N(line.LowPercent)}–{N(line.HighPercent)} %",
        line.StatedPercent is { } stated ? $"stated {N(stated)} %" : null, Read(line.Hazards));

    private static string Read(HazardLines h) => Join("; ",
        h.Classes?.Trim(), h.Limits is null ? null : $"limits {h.Limits.Trim()}",
        With(h.OralMgPerKg, "mg/kg oral"), With(h.DermalMgPerKg, "mg/kg dermal"), With(h.VapourMgPerLitre, "mg/L vapour"), With(h.MistMgPerLitre, "mg/L mist"),
        h.AcuteM is null ? null : $"M {N(h.AcuteM)} acute", h.ChronicM is null ? null : $"M {N(h.ChronicM)} chronic");

    private static string ReadCertificate(SetSafety s) => Join("; ",
        s.CertificateAmendment is null ? null : $"amendment {s.CertificateAmendment.Trim()}", Date(s.CertificateIssuedOn),
        string.Join(", ", s.CertificateLimits.Select(c => $"{c.Category?.Trim()} {N(c.MaxPercent)} %")));

    private static string Join(string between, params string?[] parts) => string.Join(between, parts.Where(part => !string.IsNullOrEmpty(part)));

    private static string Date(DateOnly? date) => date?.ToString("d MMM yyyy", CultureInfo.CurrentCulture) ?? "";

    private static string Percent(decimal? value) => value is null ? "" : $"{N(value)} %";

    private static string? With(decimal? value, string unit) => value is null ? null : $"{N(value)} {unit}";

    private static string N(decimal? value) => value is { } v ? QuantityFormat.Editable(v, CultureInfo.CurrentCulture) : "–";
}
