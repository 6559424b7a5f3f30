using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.FlashPoints;

/// <summary>Chooses a model of activity for a set of components, and gives their coefficients.</summary>
internal sealed class FlashActivity
{
    private readonly IReadOnlyList<FlashComponent> _components;
    private readonly double[] _fractions;
    private readonly UnifacMixture? _groups;
    private readonly int _ethanol;
    private readonly int _water;

    internal FlashActivity(IReadOnlyList<FlashComponent> components)
    {
        _components = components;
        _fractions = [.. components.Select(component => component.MoleFraction)];
        _ethanol = IndexOf(Substances.EthanolCas);
        _water = IndexOf(Substances.WaterCas);
        UnifacMolecule?[] molecules = [.. components.Select(component => Unifac.Find(component.Substance.Cas))];
        UnifacMolecule[] found = [.. molecules.OfType<UnifacMolecule>()];
        _groups = found.Length == molecules.Length ? new(found, _fractions) : null;
        Model = Choose();
    }

    internal FlashModel Model { get; }

    /// <summary>In the order of the components.</summary>
    internal double[] Gammas(double kelvin) => Model switch
    {
        FlashModel.Unifac => _groups!.Gammas(kelvin),
        FlashModel.Uniquac or FlashModel.UniquacAndIdeal => WithPair(EthanolWaterActivity.Uniquac(EthanolOfPair, kelvin)),
        _ => Ideal(),
    };

    /// <summary>The same components with another model of ethanol and water.</summary>
    internal double[] GammasBy(Func<double, double, ActivityPair> model, double kelvin) => WithPair(model(EthanolOfPair, kelvin));

    private double EthanolOfPair => _fractions[_ethanol] / (_fractions[_ethanol] + _fractions[_water]);

    private FlashModel Choose()
    {
        if (_components.Count == 1)
        {
            return FlashModel.PureSubstance;
        }

        bool pair = _ethanol >= 0 && _water >= 0;
        double total = _components.Sum(component => component.MassFraction);
        double others = _components.Where((_, i) => i != _ethanol && i != _water).Sum(component => component.MassFraction);
        if (pair && others / total <= EthanolWaterScope.TraceShare)
        {
            return FlashModel.Uniquac;
        }

        if (_groups is not null)
        {
            return FlashModel.Unifac;
        }

        return pair ? FlashModel.UniquacAndIdeal : FlashModel.Ideal;
    }

    private double[] WithPair(ActivityPair pair)
    {
        double[] gammas = Ideal();
        gammas[_ethanol] = pair.Ethanol;
        gammas[_water] = pair.Water;
        return gammas;
    }

    private double[] Ideal()
    {
        var gammas = new double[_components.Count];
        Array.Fill(gammas, 1);
        return gammas;
    }

    private int IndexOf(string cas)
    {
        for (int i = 0; i < _components.Count; i++)
        {
            if (_components[i].Substance.Cas.Text == cas)
            {
                return i;
            }
        }

        return -1;
    }
}
