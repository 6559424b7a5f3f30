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
    private const double Z = 10;

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
    public static double[] Gammas(IReadOnlyList<UnifacMolecule> molecules, IReadOnlyList<double> moleFractions, double kelvin)
    {
        ArgumentNullException.ThrowIfNull(molecules);
        ArgumentNullException.ThrowIfNull(moleFractions);
        UnifacGroup[] groups = [.. molecules.SelectMany(molecule => molecule.Groups).Select(part => part.Group).Distinct()];
        double[,] psi = Psi(groups, kelvin);
        double[][] counts = [.. molecules.Select(molecule => Counts(molecule, groups))];
        double[] inMixture = ResidualOf(groups, psi, Mixed(counts, moleFractions));
        double volume = Weighted(molecules, moleFractions, molecule => molecule.R);
        double surface = Weighted(molecules, moleFractions, molecule => molecule.Q);
        var gammas = new double[molecules.Count];
        for (int i = 0; i < gammas.Length; i++)
        {
            double[] alone = ResidualOf(groups, psi, counts[i]);
            double ln = Combinatorial(molecules[i], volume, surface);
            for (int k = 0; k < groups.Length; k++)
            {
                ln += counts[i][k] == 0 ? 0 : counts[i][k] * (inMixture[k] - alone[k]);
            }

            gammas[i] = Math.Exp(ln);
        }

        return gammas;
    }

    /// <summary>The part from the sizes of the molecules (Staverman and Guggenheim).</summary>
    private static double Combinatorial(UnifacMolecule molecule, double volume, double surface)
    {
        double phi = molecule.R / volume;
        double ratio = phi * surface / molecule.Q;
        return Math.Log(phi) + 1 - phi - (Z / 2 * molecule.Q * (Math.Log(ratio) + 1 - ratio));
    }

    /// <summary>ln Γ of each group in a solution of groups.</summary>
    private static double[] ResidualOf(UnifacGroup[] groups, double[,] psi, double[] counts)
    {
        double surface = 0;
        for (int k = 0; k < groups.Length; k++)
        {
            surface += counts[k] * groups[k].Q;
        }

        var theta = new double[groups.Length];
        for (int k = 0; k < groups.Length; k++)
        {
            theta[k] = counts[k] * groups[k].Q / surface;
        }

        var seen = new double[groups.Length];
        for (int k = 0; k < groups.Length; k++)
        {
            for (int m = 0; m < groups.Length; m++)
            {
                seen[k] += theta[m] * psi[m, k];
            }
        }

        var residual = new double[groups.Length];
        for (int k = 0; k < groups.Length; k++)
        {
            double pull = 0;
            for (int m = 0; m < groups.Length; m++)
            {
                pull += theta[m] * psi[k, m] / seen[m];
            }

            residual[k] = groups[k].Q * (1 - Math.Log(seen[k]) - pull);
        }

        return residual;
    }

    private static double[,] Psi(UnifacGroup[] groups, double kelvin)
    {
        var psi = new double[groups.Length, groups.Length];
        for (int m = 0; m < groups.Length; m++)
        {
            for (int n = 0; n < groups.Length; n++)
            {
                (int Main, int Other) pair = (groups[m].Main, groups[n].Main);
                psi[m, n] = pair.Main == pair.Other ? 1 : Math.Exp(-Interactions[pair] / kelvin);
            }
        }

        return psi;
    }

    private static double[] Counts(UnifacMolecule molecule, UnifacGroup[] groups)
    {
        var counts = new double[groups.Length];
        foreach ((UnifacGroup group, int count) in molecule.Groups)
        {
            counts[Array.IndexOf(groups, group)] += count;
        }

        return counts;
    }

    private static double[] Mixed(double[][] counts, IReadOnlyList<double> fractions)
    {
        var mixed = new double[counts[0].Length];
        for (int i = 0; i < counts.Length; i++)
        {
            for (int k = 0; k < mixed.Length; k++)
            {
                mixed[k] += fractions[i] * counts[i][k];
            }
        }

        return mixed;
    }

    private static double Weighted(IReadOnlyList<UnifacMolecule> molecules, IReadOnlyList<double> fractions, Func<UnifacMolecule, double> of)
    {
        double sum = 0;
        for (int i = 0; i < molecules.Count; i++)
        {
            sum += fractions[i] * of(molecules[i]);
        }

        return sum;
    }
}
