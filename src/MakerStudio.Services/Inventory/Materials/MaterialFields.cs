using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>One thing that can be typed about a material: its name, how it reads, how it is taken over.</summary>
/// <param name="Read">In words for a comparison; empty when nothing is stated.</param>
/// <param name="Take">Copies it from the first form into the second.</param>
public sealed record MaterialField(string Label, Func<MaterialForm, string> Read, Action<MaterialForm, MaterialForm> Take);

/// <summary>A field in the three versions a stale edit knows.</summary>
/// <param name="Opened">When the form was opened.</param>
/// <param name="Theirs">Saved since by the other person.</param>
public sealed record MaterialDifference(MaterialField Field, string Opened, string Theirs, string Yours)
{
    /// <summary>Only they changed it.</summary>
    public bool OnlyTheirs => Opened == Yours;
}

/// <summary>Every field of a material once, for comparing versions of it.</summary>
public static class MaterialFields
{
    public static IReadOnlyList<MaterialField> All { get; } =
    [
        new("Name", m => m.Name?.Trim() ?? "", (from, to) => to.Name = from.Name),
        new("Kind", m => m.Kind is { } kind ? MaterialKinds.Name(kind) : "", (from, to) => to.Kind = from.Kind),
        new("CAS", m => CasNumber.TryParse(m.Cas, out var cas, out _) ? cas.Text : m.Cas?.Trim() ?? "", (from, to) => to.Cas = from.Cas),
        new("Stocked in", Unit, (from, to) => to.StockedIn = from.StockedIn),
        new("Density", m => m.Density is { } d ? $"{N(d)} g/mL at {N(m.DensityAtCelsius)} °C" : "", (from, to) => (to.Density, to.DensityAtCelsius) = (from.Density, from.DensityAtCelsius)),
        new("Alcohol", Alcohol, (from, to) => (to.AlcoholValue, to.AlcoholBasis) = (from.AlcoholValue, from.AlcoholBasis)),
        new("Flash point", m => With(m.FlashPointCelsius, "°C"), (from, to) => to.FlashPointCelsius = from.FlashPointCelsius),
        new("Shelf life", m => With(m.ShelfLifeDays, "days"), (from, to) => to.ShelfLifeDays = from.ShelfLifeDays),
        new("Life after opening", m => With(m.LifeAfterOpeningDays, "days"), (from, to) => to.LifeAfterOpeningDays = from.LifeAfterOpeningDays),
        new("Reorder point", m => With(m.ReorderPoint, Unit(m)), (from, to) => to.ReorderPoint = from.ReorderPoint),
        new("Safety stock", m => With(m.SafetyStock, Unit(m)), (from, to) => to.SafetyStock = from.SafetyStock),
        new("An order lasts", m => With(m.OrderCoverDays, "days"), (from, to) => to.OrderCoverDays = from.OrderCoverDays),
        new("20 drops weigh", m => With(m.TwentyDropsGrams, "g"), (from, to) => to.TwentyDropsGrams = from.TwentyDropsGrams),
        new("Required papers", m => string.Join(", ", m.RequiredPapers.Distinct().Order().Select(PaperKinds.Name)), (from, to) => to.RequiredPapers = [.. from.RequiredPapers]),
        new("Suppliers", Suppliers, (from, to) => to.Suppliers = [.. from.Suppliers.Select(s => s with { })]),
        new("Notes", m => m.Notes?.Trim() ?? "", (from, to) => to.Notes = from.Notes),
    ];

    /// <summary>The fields in which the saved version and yours differ, in the order of the form.</summary>
    public static IReadOnlyList<MaterialDifference> Compare(MaterialForm opened, MaterialForm theirs, MaterialForm yours) =>
        [.. All.Select(f => new MaterialDifference(f, f.Read(opened), f.Read(theirs), f.Read(yours))).Where(d => d.Theirs != d.Yours)];

    /// <summary>For the record: "Changed Fig fragrance oil: density 0.98 g/mL at 20 °C → 0.981 g/mL at 20 °C".</summary>
    internal static string WhatChanged(MaterialForm before, MaterialForm after)
    {
        var changes = All.Select(f => (f.Label, Before: f.Read(before), After: f.Read(after))).Where(c => c.Before != c.After)
            .Select(c => c.Label == "Notes" ? "notes" : $"{c.Label.ToLowerInvariant()} {Or(c.Before)} → {Or(c.After)}").ToList();
        return changes.Count == 0 ? $"Saved {before.Name} without a change" : $"Changed {before.Name}: {string.Join("; ", changes)}";
    }

    private static string Unit(MaterialForm m) => m.StockedIn == StockUnit.Gram ? "g" : "each";

    private static string Or(string text) => text.Length == 0 ? "–" : text;

    private static string Alcohol(MaterialForm m) => m.AlcoholValue is not { } value ? "" : m.AlcoholBasis switch
    {
        AlcoholBasis.PercentVolume => $"{N(value)} % vol",
        AlcoholBasis.PercentMass => $"{N(value)} % by weight",
        AlcoholBasis.UsProof => $"{N(value)} US proof",
        _ => N(value),
    };

    private static string Suppliers(MaterialForm m) => string.Join("; ", m.Suppliers
        .OrderBy(s => s.Name?.Trim(), StringComparer.OrdinalIgnoreCase)
        .Select(s => string.Join(", ", new[]
        {
            s.Name?.Trim(), s.Code?.Trim(), s.LeadTimeDays is { } days ? $"{N(days)} days" : null, s.PackNote?.Trim(),
            s.Minimum is { } least ? $"at least {N(least)} {Unit(m)}" : null, s.Pack is { } pack ? $"packs of {N(pack)} {Unit(m)}" : null,
        }.Where(t => !string.IsNullOrEmpty(t)))));

    private static string With(decimal? value, string unit) => value is { } v ? $"{N(v)} {unit}" : "";

    private static string N(decimal? value) => value is { } v ? QuantityFormat.Editable(v, CultureInfo.CurrentCulture) : "–";
}
