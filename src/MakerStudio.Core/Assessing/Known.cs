using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Assessing;

/// <summary>
/// A substance or material that the program knows by its CAS number, or by its name where the papers give no
/// composition. Names are English; a CAS number is the safer way.
/// </summary>
/// <param name="Cas">Numbers from memory, save that their check digits hold.</param>
internal sealed record Known(IReadOnlyList<CasNumber> Cas, IReadOnlyList<string> Names)
{
    internal static Known Propanol { get; } = new(["67-63-0"], "isopropanol", "isopropyl alcohol", "propan-2-ol", "2-propanol");

    internal static Known WitchHazel { get; } = new(["84696-19-5", "68916-39-2"], "witch hazel", "hamamelis");

    internal static Known Vanillin { get; } = new(["121-33-5", "121-32-4"]);

    internal static Known Limonene { get; } = new(["138-86-3", "5989-27-5", "5989-54-8"]);

    /// <summary>BHT, BHA and the tocopherols.</summary>
    internal static Known Antioxidant { get; } = new(
        ["128-37-0", "25013-16-5", "10191-41-0", "59-02-9", "1406-18-4", "1406-66-2", "2074-53-5"],
        "antioxidant", "tocopherol", "vitamin E", "BHT");

    /// <summary>Diethyl, dibutyl, bis(2-ethylhexyl), benzyl butyl and dimethyl phthalate.</summary>
    internal static Known Phthalate { get; } = new(["84-66-2", "84-74-2", "117-81-7", "85-68-7", "131-11-3"]);

    private Known(string[] cas, params string[] names)
        : this([.. cas.Select(CasNumber.Of)], names)
    {
    }

    internal bool Is(CasNumber? cas)
    {
        if (cas is null)
        {
            return false;
        }

        // Asked for every constituent as a formula is typed, so no enumerator.
        for (int i = 0; i < Cas.Count; i++)
        {
            if (Cas[i].Text == cas.Text)
            {
                return true;
            }
        }

        return false;
    }

    internal bool IsNamedIn(string name) => Names.Any(each => name.Contains(each, StringComparison.OrdinalIgnoreCase));
}
