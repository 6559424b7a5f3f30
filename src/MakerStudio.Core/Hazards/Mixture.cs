namespace MakerStudio.Core.Hazards;

public enum PhysicalForm
{
    Liquid,

    /// <summary>Wax, sachet, powder: the rules for liquids do not apply.</summary>
    Solid,

    /// <summary>A pressurised dispenser; classed as an aerosol, not as a flammable liquid.</summary>
    Aerosol,
}

/// <summary>Whose categories are used.</summary>
public enum HazardScheme
{
    /// <summary>Regulation (EC) 1272/2008.</summary>
    EuClp,

    /// <summary>UN GHS: acute toxicity up to 5,000 mg/kg counts, and Flam. Liq. 4 exists.</summary>
    UnGhs,
}

/// <param name="Degrees">°C, closed cup.</param>
/// <param name="IsMeasured">False for an estimate by calculation.</param>
/// <param name="Margin">°C that an estimate must lie above a limit to decide, at least 5; 0 where nothing in it burns. Nothing for a measured one.</param>
/// <param name="IsStandIn">The lowest flash point of parts that could not be reckoned with, for want of one of the mixture.</param>
public sealed record FlashPointValue(decimal Degrees, bool IsMeasured, decimal Margin = FlashPointValue.LeastMargin, bool IsStandIn = false)
{
    /// <summary>°C (CLP Annex I, 2.6.4.2 and 2.6.4.3, from memory).</summary>
    public const decimal LeastMargin = 5m;
}

/// <param name="Percent">Of the finished mixture, by weight, 0 to 100.</param>
public sealed record HazardLine(Guid LineId, string Name, decimal Percent, MaterialHazards Material);

/// <summary>A formula and what was measured of the finished mixture. Null means that nobody knows.</summary>
/// <param name="Lines">In any order; shares by weight.</param>
/// <param name="InitialBoilingPoint">°C.</param>
/// <param name="SustainsCombustion">Result of the UN test L.2.</param>
/// <param name="KinematicViscosity">mm²/s at 40 °C.</param>
/// <param name="Ph">Of the mixture; only for those with water.</param>
/// <param name="InhaledAs">The form in which it is breathed: one for the whole mixture.</param>
public sealed record MixtureFacts(
    IReadOnlyList<HazardLine> Lines,
    PhysicalForm Form = PhysicalForm.Liquid,
    FlashPointValue? FlashPoint = null,
    decimal? InitialBoilingPoint = null,
    bool? SustainsCombustion = null,
    decimal? KinematicViscosity = null,
    decimal? Ph = null,
    AcuteRoute InhaledAs = AcuteRoute.InhalationVapour,
    HazardScheme Scheme = HazardScheme.EuClp);

/// <param name="Percent">What this line brings of the ingredient, in per cent of the mixture.</param>
public sealed record LineShare(Guid LineId, string LineName, decimal Percent);

/// <summary>A substance, or a whole material, in the finished mixture, summed over the lines that bring it.</summary>
/// <param name="Percent">Of the mixture, by weight.</param>
/// <param name="IsWhole">A material whose listed substances do not account for its class.</param>
public sealed record Ingredient(string Name, string? Cas, decimal Percent, HazardFacts Facts, IReadOnlyList<LineShare> Lines, bool IsWhole = false);

/// <summary>A mixture as the rules see it: the same substance from several lines is one ingredient.</summary>
public sealed class Mixture
{
    private const decimal Whole = 100m;

    private readonly List<Ingredient> _all;
    private readonly List<HazardLine> _withClassesOfTheWhole;

    /// <exception cref="ArgumentOutOfRangeException">A share below 0 or above 100 %.</exception>
    public Mixture(MixtureFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.Lines.Any(line => line.Percent is < 0 or > Whole))
        {
            throw new ArgumentOutOfRangeException(nameof(facts), "A share lies between 0 and 100 %.");
        }

        Facts = facts;
        _withClassesOfTheWhole = [.. facts.Lines.Where(line => line.Percent > 0 && line.Material is { IsComposed: true, AsSupplied: not null })];
        _all = Together(facts.Lines);
    }

    public MixtureFacts Facts { get; }

    /// <summary>Every ingredient, whole materials left out where their substances are listed.</summary>
    public IReadOnlyList<Ingredient> All => _all;

    /// <summary>
    /// For rules that add: the ingredients that bear on the class. A material that its listed substances do not
    /// account for stands as a whole, in their place.
    /// </summary>
    public IReadOnlyList<Ingredient> ToAdd(HazardClass hazardClass)
    {
        List<HazardLine> wholes = NotExplained(hazardClass);
        return wholes.Count == 0 ? Bearing(hazardClass) : [.. Without(wholes, Bearing(hazardClass)), .. Wholes(wholes)];
    }

    /// <summary>For rules that look at one ingredient at a time: such a material stands beside its substances.</summary>
    public IReadOnlyList<Ingredient> Singly(HazardClass hazardClass)
    {
        List<HazardLine> wholes = NotExplained(hazardClass);
        return wholes.Count == 0 ? Bearing(hazardClass) : [.. Bearing(hazardClass), .. Wholes(wholes)];
    }

    private List<Ingredient> Bearing(HazardClass hazardClass) => _all.FindAll(each => each.Facts.BearsOn(hazardClass));

    /// <summary>The same ingredients, less what these lines bring.</summary>
    private static IEnumerable<Ingredient> Without(List<HazardLine> lines, List<Ingredient> ingredients)
    {
        // By name too: a pre-blend's materials stand under the one line that brings them all.
        HashSet<(Guid, string)> left = [.. lines.Select(line => (line.LineId, line.Name))];
        foreach (Ingredient each in ingredients)
        {
            List<LineShare> kept = [.. each.Lines.Where(share => !left.Contains((share.LineId, share.LineName)))];
            if (kept.Count == each.Lines.Count)
            {
                yield return each;
            }
            else if (kept.Count > 0)
            {
                yield return each with { Percent = kept.Sum(share => share.Percent), Lines = kept };
            }
        }
    }

    private List<HazardLine> NotExplained(HazardClass hazardClass) =>
        _withClassesOfTheWhole.Count == 0 ? [] : _withClassesOfTheWhole.FindAll(line => !line.Material.Explains(hazardClass));

    private static List<Ingredient> Wholes(List<HazardLine> lines) => [.. lines
        .GroupBy(line => line.Material.Name, StringComparer.OrdinalIgnoreCase)
        .OrderBy(same => same.Key, StringComparer.OrdinalIgnoreCase)
        .Select(same => new Ingredient(
            same.Select(line => line.Material.Name).Min(StringComparer.Ordinal)!,
            null,
            same.Sum(line => line.Percent),
            same.Select(line => line.Material.AsSupplied!).Aggregate((one, other) => one.Or(other)),
            [.. same.Select(line => new LineShare(line.LineId, line.Name, line.Percent))],
            IsWhole: true))];

    private static List<Ingredient> Together(IEnumerable<HazardLine> lines)
    {
        var found = new Dictionary<string, (ClassifiedSubstance Substance, HazardFacts Facts, List<LineShare> Shares)>(StringComparer.Ordinal);
        foreach (HazardLine line in lines.Where(line => line.Percent > 0))
        {
            foreach (Constituent part in line.Material.Constituents.Where(part => part.UsedPercent > 0))
            {
                var share = new LineShare(line.LineId, line.Name, line.Percent * part.UsedPercent / Whole);
                if (found.TryGetValue(part.Substance.Identity, out var before))
                {
                    before.Shares.Add(share);
                    found[part.Substance.Identity] = (FirstByName(before.Substance, part.Substance), before.Facts.Or(part.Substance.Facts), before.Shares);
                }
                else
                {
                    found.Add(part.Substance.Identity, (part.Substance, part.Substance.Facts, [share]));
                }
            }
        }

        return [.. found.OrderBy(each => each.Key, StringComparer.Ordinal).Select(each => new Ingredient(
            each.Value.Substance.Name, each.Value.Substance.Cas, each.Value.Shares.Sum(share => share.Percent), each.Value.Facts, each.Value.Shares))];
    }

    /// <summary>One of two names, whichever line comes first.</summary>
    private static ClassifiedSubstance FirstByName(ClassifiedSubstance one, ClassifiedSubstance other) =>
        StringComparer.Ordinal.Compare(one.Name, other.Name) <= 0 ? one : other;
}
