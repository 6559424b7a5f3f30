using System.Collections.Frozen;
using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <param name="R">Volume.</param>
/// <param name="Q">Surface.</param>
public sealed record UnifacGroup(string Name, int Main, double R, double Q, int Carbon, int Hydrogen, int Oxygen);

/// <summary>A molecule as groups with how often each occurs.</summary>
public sealed record UnifacMolecule(IReadOnlyList<(UnifacGroup Group, int Count)> Groups, Source Source)
{
    public double R { get; } = Groups.Sum(part => part.Count * part.Group.R);

    public double Q { get; } = Groups.Sum(part => part.Count * part.Group.Q);
}

/// <summary>
/// Activity coefficients from groups: original UNIFAC, constants of Hansen et al. 1991 as in Poling, Prausnitz and
/// O'Connell, 5th ed., 11 of the main groups. For liquids of one phase near room temperature.
/// </summary>
public static class Unifac
{
    private static readonly FrozenDictionary<string, UnifacGroup> Groups = DataTable.Read("unifac_groups.csv").ToFrozenDictionary(
        row => row.Text("group"),
        row => new UnifacGroup(
            row.Text("group"), (int)row.Number("main"), row.Number("r"), row.Number("q"),
            (int)row.Number("carbon"), (int)row.Number("hydrogen"), (int)row.Number("oxygen")));

    private static readonly FrozenDictionary<(int, int), double> Interactions = DataTable.Read("unifac_interactions.csv")
        .ToFrozenDictionary(row => ((int)row.Number("m"), (int)row.Number("n")), row => row.Number("a_K"));

    private static readonly FrozenDictionary<string, UnifacMolecule> Molecules = DataTable.Read("unifac_molecules.csv")
        .ToFrozenDictionary(row => row.Text("cas"), row => Read(row.Text("groups"), row.Source()));

    public static Source Source { get; } = new(
        "UNIFAC (Hansen et al. 1991; Poling, Prausnitz and O'Connell, 5th ed.), 11 main groups", DataStatus.Secondary);

    /// <summary>Substances of the built-in table that groups are known for.</summary>
    public static IReadOnlyCollection<string> KnownCas => Molecules.Keys;

    /// <summary>Null where the molecule has a group that is not in the table.</summary>
    public static UnifacMolecule? Find(CasNumber cas)
    {
        ArgumentNullException.ThrowIfNull(cas);
        return Molecules.GetValueOrDefault(cas.Text);
    }

    /// <summary>A molecule written as "CH3*1 CH2*1 OH*1".</summary>
    /// <exception cref="KeyNotFoundException">A group is not in the table.</exception>
    public static UnifacMolecule Read(string groups, Source source)
    {
        ArgumentNullException.ThrowIfNull(groups);
        return new([.. groups.Split(' ').Select(part => part.Split('*')).Select(part => (Groups[part[0]], int.Parse(part[1], CultureInfo.InvariantCulture)))], source);
    }

    /// <summary>In the order of the molecules.</summary>
    /// <param name="moleFractions">Summing to 1.</param>
    public static double[] Gammas(IReadOnlyList<UnifacMolecule> molecules, IReadOnlyList<double> moleFractions, double kelvin) =>
        new UnifacMixture(molecules, moleFractions).Gammas(kelvin);

    /// <summary>K; 0 within one main group.</summary>
    internal static double Interaction(UnifacGroup group, UnifacGroup with) =>
        group.Main == with.Main ? 0 : Interactions[(group.Main, with.Main)];
}
