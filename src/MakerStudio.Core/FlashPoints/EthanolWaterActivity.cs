using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <summary>Activity coefficients of ethanol and of water in each other.</summary>
public readonly record struct ActivityPair(double Ethanol, double Water);

/// <param name="Of">From the mole fraction of ethanol, 0 to 1, and K.</param>
public sealed record ActivityModel(string Name, Func<double, double, ActivityPair> Of);

/// <summary>
/// Five published models of the same mixture. UNIQUAC fits the published flash points best and is the one used; the
/// others show how far models differ. Each takes the mole fraction of ethanol, 0 to 1, and K.
/// </summary>
public static class EthanolWaterActivity
{
    /// <summary>Coordination number of the lattice in UNIQUAC.</summary>
    private const double Z = 10;

    // UNIQUAC interaction, K (ChemSep, Kooijman and Taylor), volume and surface (DECHEMA; ethanol's from memory, ChemSep lists 2.11 and 1.97).
    private const double UniquacB12 = -87.46005814161899;
    private const double UniquacB21 = -55.288075960115854;
    private const double R1 = 2.1055;
    private const double R2 = 0.92;
    private const double Q1 = 1.972;
    private const double Q2 = 1.4;

    // NRTL, K (ChemSep).
    private const double NrtlB12 = -29.166654483541816;
    private const double NrtlB21 = 624.8676222389441;
    private const double NrtlAlpha = 0.2937;

    // Wilson, K (ChemSep).
    private const double WilsonA12 = -1.1769274893976625;
    private const double WilsonB12 = -192.38082765657816;
    private const double WilsonB21 = -480.8011032813958;

    // van Laar, fitted to boiling at 101 kPa (Holmes and Van Winkle 1970, as tabulated in Perry's; from memory).
    private const double VanLaarA12 = 1.6798;
    private const double VanLaarA21 = 0.9227;

    /// <summary>The model used first, then the others.</summary>
    public static IReadOnlyList<ActivityModel> All { get; } =
    [
        new("UNIQUAC", Uniquac),
        new("NRTL", Nrtl),
        new("Wilson", Wilson),
        new("vanLaar", VanLaar),
        new("UNIFAC", ByUnifac),
    ];

    public static Source UniquacSource { get; } = new(
        "UNIQUAC, ethanol–water constants of ChemSep (Kooijman and Taylor); r and q of ethanol from memory", DataStatus.Secondary);

    public static ActivityPair Uniquac(double ethanol, double kelvin)
    {
        (double x1, double x2) = (ethanol, 1 - ethanol);
        (double t12, double t21) = (Math.Exp(UniquacB12 / kelvin), Math.Exp(UniquacB21 / kelvin));
        // φ/x and θ/φ stay finite where a fraction is 0.
        double volume = (x1 * R1) + (x2 * R2);
        double surface = (x1 * Q1) + (x2 * Q2);
        (double th1, double th2) = (x1 * Q1 / surface, x2 * Q2 / surface);
        (double l1, double l2) = ((Z / 2 * (R1 - Q1)) - (R1 - 1), (Z / 2 * (R2 - Q2)) - (R2 - 1));
        double sum = (x1 * l1) + (x2 * l2);
        double s1 = th1 + (th2 * t21);
        double s2 = (th1 * t12) + th2;
        double ln1 = Math.Log(R1 / volume) + (Z / 2 * Q1 * Math.Log(Q1 * volume / (R1 * surface))) + l1 - (R1 / volume * sum)
            + (Q1 * (1 - Math.Log(s1) - (th1 / s1) - (th2 * t12 / s2)));
        double ln2 = Math.Log(R2 / volume) + (Z / 2 * Q2 * Math.Log(Q2 * volume / (R2 * surface))) + l2 - (R2 / volume * sum)
            + (Q2 * (1 - Math.Log(s2) - (th1 * t21 / s1) - (th2 / s2)));
        return new(Math.Exp(ln1), Math.Exp(ln2));
    }

    public static ActivityPair Nrtl(double ethanol, double kelvin)
    {
        (double x1, double x2) = (ethanol, 1 - ethanol);
        (double t12, double t21) = (NrtlB12 / kelvin, NrtlB21 / kelvin);
        (double g12, double g21) = (Math.Exp(-NrtlAlpha * t12), Math.Exp(-NrtlAlpha * t21));
        (double d1, double d2) = (x1 + (x2 * g21), x2 + (x1 * g12));
        double ln1 = x2 * x2 * ((t21 * g21 * g21 / (d1 * d1)) + (t12 * g12 / (d2 * d2)));
        double ln2 = x1 * x1 * ((t12 * g12 * g12 / (d2 * d2)) + (t21 * g21 / (d1 * d1)));
        return new(Math.Exp(ln1), Math.Exp(ln2));
    }

    public static ActivityPair Wilson(double ethanol, double kelvin)
    {
        (double x1, double x2) = (ethanol, 1 - ethanol);
        double l12 = Math.Exp(WilsonA12 + (WilsonB12 / kelvin));
        double l21 = Math.Exp(-WilsonA12 + (WilsonB21 / kelvin));
        (double d1, double d2) = (x1 + (l12 * x2), x2 + (l21 * x1));
        double difference = (l12 / d1) - (l21 / d2);
        return new(Math.Exp((x2 * difference) - Math.Log(d1)), Math.Exp((-x1 * difference) - Math.Log(d2)));
    }

    public static ActivityPair ByUnifac(double ethanol, double kelvin)
    {
        double[] gammas = Unifac.Gammas(
            [Unifac.Find(Substances.Ethanol.Cas)!, Unifac.Find(Substances.Water.Cas)!], [ethanol, 1 - ethanol], kelvin);
        return new(gammas[0], gammas[1]);
    }

    /// <summary>Without temperature.</summary>
    public static ActivityPair VanLaar(double ethanol, double kelvin)
    {
        _ = kelvin;
        (double a, double b) = (VanLaarA12 * ethanol, VanLaarA21 * (1 - ethanol));
        double whole = a + b;
        return new(Math.Exp(VanLaarA12 * b * b / (whole * whole)), Math.Exp(VanLaarA21 * a * a / (whole * whole)));
    }
}
