using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

public enum RestrictionKind
{
    Restricted,

    /// <summary>Limited because of light on skin; judged together with the others of the kind.</summary>
    Phototoxic,

    /// <summary>Not to be used: its limits are 0.</summary>
    Prohibited,
}

/// <summary>A substance that the fragrance standards limit.</summary>
/// <param name="Limit">With the categories whose limit is known here. None at all: that it is restricted is known, its limits are not.</param>
/// <param name="Effect">What the limit guards against; may be empty.</param>
/// <param name="Source">Of the limits; where there are none, of the restriction.</param>
public sealed record RestrictedSubstance(SubstanceLimit Limit, RestrictionKind Kind, string Effect, Source Source)
{
    /// <summary>That it is restricted is known, and no limit.</summary>
    public bool HasNoLimitHere => Limit.MaxPercent.Count == 0;
}

/// <summary>
/// The built-in limits. Few: most limits of the standards could not be read anywhere, and are left for the studio to
/// enter from a certificate or the published standard. Nothing is guessed.
/// </summary>
public static class RestrictedSubstances
{
    private static readonly string[] Categories =
        [FragranceCategories.HandContact, FragranceCategories.Spray, FragranceCategories.NoSkinContact];

    public static IReadOnlyList<RestrictedSubstance> All { get; } = [.. DataTable.Read("fragrance_limits.csv").Select(Read)];

    /// <summary>What holds in a category: the studio's own limits, and the built-in ones of substances it says nothing of.</summary>
    internal static IReadOnlyList<LimitInForce> In(string category, IReadOnlyList<SubstanceLimit> own)
    {
        IReadOnlyList<LimitInForce> builtIn = BuiltIn.GetValueOrDefault(category, []);
        if (own.Count == 0)
        {
            return builtIn;
        }

        List<LimitInForce> mine = [.. own.Select(limit => LimitInForce.Of(limit, category, LimitInForce.Studio, isOwn: true)).OfType<LimitInForce>()];
        HashSet<string> said = [.. mine.SelectMany(limit => limit.Identities)];
        return Sorted(mine.Concat(builtIn.Where(limit => !said.Overlaps(limit.Identities))));
    }

    /// <summary>Restricted by the standards, without a limit here or among the studio's own.</summary>
    internal static IEnumerable<RestrictedSubstance> WithoutLimit(IReadOnlyList<LimitInForce> inForce)
    {
        HashSet<string> limited = [.. inForce.SelectMany(limit => limit.Identities)];
        return All.Where(each => each.HasNoLimitHere && !each.Limit.Cas.Any(limited.Contains));
    }

    private static readonly Dictionary<string, IReadOnlyList<LimitInForce>> BuiltIn = Categories.ToDictionary(
        category => category,
        IReadOnlyList<LimitInForce> (category) =>
            Sorted(All.Select(each => LimitInForce.Of(each.Limit, category, each.Source, isOwn: false)).OfType<LimitInForce>()));

    private static LimitInForce[] Sorted(IEnumerable<LimitInForce> limits) =>
        [.. limits.OrderBy(limit => limit.Name, StringComparer.OrdinalIgnoreCase).ThenBy(limit => limit.MaxPercent)];

    private static RestrictedSubstance Read(DataRow row)
    {
        var kind = Enum.Parse<RestrictionKind>(row.Text("kind"));
        return new(
            new(
                row.Text("name"),
                row.Texts("cas"),
                row.Text("amendment"),
                Categories.Where(row.Has).ToDictionary(category => category, row.Decimal),
                kind == RestrictionKind.Phototoxic),
            kind,
            row.Text("effect"),
            row.Source());
    }
}

/// <summary>A limit in one category.</summary>
/// <param name="Identities">Numbers and names whose total counts.</param>
internal sealed record LimitInForce(
    string Name, IReadOnlyList<string> Identities, decimal MaxPercent, string Amendment, bool IsPhototoxic, bool IsOwn, Source Source)
{
    internal static readonly Source Studio = new("the studio's own limit", DataStatus.Read);

    /// <summary>Null where the limit says nothing of the category.</summary>
    internal static LimitInForce? Of(SubstanceLimit limit, string category, Source source, bool isOwn)
    {
        if (FragranceCategories.In(limit.MaxPercent, category) is not { } percent)
        {
            return null;
        }

        IEnumerable<string> numbers = limit.Cas.Where(cas => !string.IsNullOrWhiteSpace(cas)).Select(cas => SubstanceNames.Identity(limit.Name, cas));
        return new(
            limit.Name,
            [.. numbers.Append(SubstanceNames.Identity(limit.Name, null)).Append(limit.Name.Trim().ToUpperInvariant()).Distinct(StringComparer.Ordinal)],
            Math.Max(0, percent),
            limit.Amendment,
            limit.IsPhototoxic,
            isOwn,
            source);
    }

    /// <summary>Its identities, each once, with names that a sheet gives beside a number turned into the number.</summary>
    internal IEnumerable<string> Among(IReadOnlyDictionary<string, string> called) =>
        Identities.Select(identity => called.TryGetValue(identity, out string? number) ? number : identity).Distinct(StringComparer.Ordinal);

    internal string FromWords => IsOwn ? $"the studio's own limit, amendment {Amendment}" : $"amendment {Amendment}";
}
