using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <summary>
/// Which pictograms stay. The exclamation mark goes when the skull is there; for skin and eye irritation also when
/// corrosion is there; for skin sensitisation and skin and eye irritation when the health hazard is there for
/// respiratory sensitisation. It stays for any other class that asks for it.
/// Example: Eye Dam. 1 and Skin Irrit. 2 show corrosion alone; with Skin Sens. 1B the exclamation mark stays.
/// </summary>
public static class PictogramPrecedence
{
    public static Citation Source { get; } = new("CLP Art. 26", DataStatus.Read);

    /// <summary>In the order of their numbers.</summary>
    public static IReadOnlyList<Pictogram> Of(IReadOnlyCollection<HazardCategory> categories)
    {
        var asked = categories
            .Select(HazardCategories.Of)
            .Where(facts => facts.Pictogram is not null)
            .Select(facts => (facts.Class, Pictogram: facts.Pictogram!.Value))
            .ToList();
        bool hasSkull = asked.Exists(each => each.Pictogram == Pictogram.Ghs06);
        bool hasCorrosion = asked.Exists(each => each.Pictogram == Pictogram.Ghs05);
        bool hasRespiratory = asked.Exists(each => each.Class == HazardClass.RespiratorySensitisation);
        return [.. asked
            .Where(each => each.Pictogram != Pictogram.Ghs07 || !(hasSkull
                || (hasCorrosion && each.Class is HazardClass.Skin or HazardClass.Eye)
                || (hasRespiratory && each.Class is HazardClass.Skin or HazardClass.Eye or HazardClass.SkinSensitisation)))
            .Select(each => each.Pictogram)
            .Distinct()
            .Order()];
    }
}
