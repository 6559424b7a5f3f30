using System.Runtime.CompilerServices;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Assessing;

/// <summary>
/// A material with its sheet read: what does not change while a formula is typed. Made once for each
/// <see cref="AssessedMaterial"/> object and kept as long as that object is.
/// </summary>
/// <param name="Line">As physics sees it, without place and share.</param>
/// <param name="NotRead">What of its papers was not understood, in sentences.</param>
internal sealed record PreparedMaterial(MixtureLine Line, MaterialHazards Hazards, IReadOnlyList<string> NotRead)
{
    private const decimal Whole = 100m;

    private static readonly ConditionalWeakTable<AssessedMaterial, PreparedMaterial> Made = [];

    internal static PreparedMaterial Of(AssessedMaterial material) => Made.GetValue(material, Make);

    private static PreparedMaterial Make(AssessedMaterial material)
    {
        string? own = OwnCas(material);
        HazardFacts? ofOwn = own is null ? null : SubstanceTable.Find(own)?.Facts;
        StatedReading? sheet = material.Hazards?.Read(material.Composition.Count == 0 ? ofOwn : null);
        HazardFacts? asSupplied = sheet is null or { Facts.IsWhollyUnknown: true } ? null : sheet.Facts;
        var notRead = new List<string>(sheet?.NotRead ?? []);
        List<Hazards.Constituent> parts = [.. Listed(material, notRead)];
        if (material.Strength is not null)
        {
            AddAlcohol(parts, material);
        }
        else if (own is not null)
        {
            AddItself(parts, own, material.Name, ofOwn ?? asSupplied ?? HazardFacts.Unknown, sheet?.Facts);
        }

        // One substance and nothing else: the sheet's classes are that substance's.
        bool isItself = parts is [{ Substance.Cas: { } only }] && only == own && material.Strength is null;
        return new(FormulaMixture.LineOf(material), MaterialHazards.Of(material.Name, isItself ? null : asSupplied, parts), notRead);
    }

    /// <summary>The number it goes by as a whole: its own, else the one that goes with its name or kind.</summary>
    private static string? OwnCas(AssessedMaterial material) =>
        SubstanceShares.CasOf(material) ?? (material.Kind == MaterialKind.Water ? Substances.WaterCas : null);

    private static IEnumerable<Hazards.Constituent> Listed(AssessedMaterial material, List<string> notRead)
    {
        foreach (StatedSubstance part in material.Composition)
        {
            string identity = SubstanceNames.Identity(part.Name, part.Cas);
            string? cas = CasNumber.TryParse(identity, out CasNumber? number, out _) ? number.Text : null;
            HazardFacts? ofTable = cas is null ? null : SubstanceTable.Find(cas)?.Facts;
            StatedReading? reading = part.Hazards?.Read(ofTable);
            notRead.AddRange((reading?.NotRead ?? []).Select(each => $"{part.Name}: {each}"));
            yield return new(
                new(part.Name, cas, reading?.Facts ?? ofTable ?? HazardFacts.Unknown), part.LowPercent, part.HighPercent, part.StatedPercent);
        }
    }

    /// <summary>Alcohol and water take what the low ends of the stated denaturants leave: the worst end, as everywhere in classification.</summary>
    private static void AddAlcohol(List<Hazards.Constituent> parts, AssessedMaterial material)
    {
        MixtureLine line = FormulaMixture.LineOf(material with { Composition = [] });
        parts.RemoveAll(part => line.Constituents.Any(each => each.Cas!.Text == part.Substance.Cas));
        decimal rest = Math.Max(0, Whole - parts.Sum(part => part.StatedPercent ?? part.LowPercent));
        foreach (Blending.Constituent each in line.Constituents)
        {
            decimal percent = decimal.Round(rest * (decimal)each.MassFraction, 6);
            parts.Add(new(new(each.Name, each.Cas!.Text, SubstanceTable.Find(each.Cas.Text)?.Facts ?? HazardFacts.Unknown), percent, percent));
        }
    }

    private static void AddItself(List<Hazards.Constituent> parts, string cas, string name, HazardFacts known, HazardFacts? bySheet)
    {
        decimal rest = Whole - parts.Sum(part => part.StatedPercent ?? part.LowPercent);
        if (rest > 0 && !parts.Exists(part => part.Substance.Cas == cas))
        {
            parts.Insert(0, new(new(name, cas, parts.Count == 0 ? bySheet ?? known : known), rest, rest));
        }
    }
}
