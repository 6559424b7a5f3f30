namespace MakerStudio.Core.FlashPoints;

/// <summary>Molecules in their shares, laid out once so that each temperature costs little.</summary>
internal sealed class UnifacMixture
{
    /// <summary>Coordination number of the lattice.</summary>
    private const double Z = 10;

    private readonly IReadOnlyList<UnifacMolecule> _molecules;
    private readonly UnifacGroup[] _groups;

    /// <summary>Indices of each molecule's groups, and how often each occurs.</summary>
    private readonly (int Group, int Count)[][] _made;
    private readonly (int Group, double Count)[] _mixed;
    private readonly double[,] _interactions;
    private readonly double _volume;
    private readonly double _surface;

    internal UnifacMixture(IReadOnlyList<UnifacMolecule> molecules, IReadOnlyList<double> moleFractions)
    {
        _molecules = molecules;
        _groups = [.. molecules.SelectMany(molecule => molecule.Groups).Select(part => part.Group).Distinct()];
        _made = [.. molecules.Select(molecule => molecule.Groups.Select(part => (Array.IndexOf(_groups, part.Group), part.Count)).ToArray())];
        _mixed = [.. _groups.Select((_, k) => (k, _made.Select((made, i) => moleFractions[i] * made.Where(part => part.Group == k).Sum(part => part.Count)).Sum()))];
        _interactions = new double[_groups.Length, _groups.Length];
        for (int m = 0; m < _groups.Length; m++)
        {
            for (int n = 0; n < _groups.Length; n++)
            {
                _interactions[m, n] = Unifac.Interaction(_groups[m], _groups[n]);
            }
        }

        _volume = molecules.Select((molecule, i) => moleFractions[i] * molecule.R).Sum();
        _surface = molecules.Select((molecule, i) => moleFractions[i] * molecule.Q).Sum();
    }

    /// <summary>In the order of the molecules.</summary>
    internal double[] Gammas(double kelvin)
    {
        double[,] psi = Psi(kelvin);
        double[] inMixture = Residual(psi, _mixed);
        var gammas = new double[_molecules.Count];
        for (int i = 0; i < gammas.Length; i++)
        {
            (int Group, int Count)[] made = _made[i];
            double[] alone = Residual(psi, Array.ConvertAll(made, part => (part.Group, (double)part.Count)));
            double ln = Combinatorial(_molecules[i]);
            for (int k = 0; k < made.Length; k++)
            {
                ln += made[k].Count * (inMixture[made[k].Group] - alone[k]);
            }

            gammas[i] = Math.Exp(ln);
        }

        return gammas;
    }

    /// <summary>The part from the sizes of the molecules (Staverman and Guggenheim).</summary>
    private double Combinatorial(UnifacMolecule molecule)
    {
        double phi = molecule.R / _volume;
        double ratio = phi * _surface / molecule.Q;
        return Math.Log(phi) + 1 - phi - (Z / 2 * molecule.Q * (Math.Log(ratio) + 1 - ratio));
    }

    /// <summary>ln Γ of each group given, in a solution of just these groups.</summary>
    private double[] Residual(double[,] psi, (int Group, double Count)[] parts)
    {
        double surface = 0;
        foreach ((int group, double count) in parts)
        {
            surface += count * _groups[group].Q;
        }

        double[] theta = Array.ConvertAll(parts, part => part.Count * _groups[part.Group].Q / surface);
        var seen = new double[parts.Length];
        for (int k = 0; k < parts.Length; k++)
        {
            for (int m = 0; m < parts.Length; m++)
            {
                seen[k] += theta[m] * psi[parts[m].Group, parts[k].Group];
            }
        }

        var residual = new double[parts.Length];
        for (int k = 0; k < parts.Length; k++)
        {
            double pull = 0;
            for (int m = 0; m < parts.Length; m++)
            {
                pull += theta[m] * psi[parts[k].Group, parts[m].Group] / seen[m];
            }

            residual[k] = _groups[parts[k].Group].Q * (1 - Math.Log(seen[k]) - pull);
        }

        return residual;
    }

    private double[,] Psi(double kelvin)
    {
        var psi = new double[_groups.Length, _groups.Length];
        for (int m = 0; m < _groups.Length; m++)
        {
            for (int n = 0; n < _groups.Length; n++)
            {
                psi[m, n] = Math.Exp(-_interactions[m, n] / kelvin);
            }
        }

        return psi;
    }
}
