using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>How much VOC from fragrance a rule does not count.</summary>
/// <param name="Percent">Of the product by weight, all fragrances together.</param>
public sealed record FragranceExemption(decimal Percent, Source Source)
{
    /// <summary>Products made from this day on: 17 CCR 94510(c), text current to November 2024.</summary>
    public static DateOnly CaliforniaChange { get; } = new(2031, 1, 1);

    private static readonly FragranceExemption Federal = new(2m, new("40 CFR 59.203", DataStatus.Memory));
    private static readonly FragranceExemption States = new(2m, new("OTC Model Rule for Consumer Products", DataStatus.Memory));
    private static readonly Source CaliforniaText = new("17 CCR 94510(c)", DataStatus.Read);
    private static readonly FragranceExemption CaliforniaBefore = new(2m, CaliforniaText);
    private static readonly FragranceExemption CaliforniaAirFresheners = new(0.25m, CaliforniaText);
    private static readonly FragranceExemption CaliforniaOthers = new(0m, CaliforniaText);

    /// <param name="isAirFreshener">California's lasting share is for air fresheners; other categories lose it.</param>
    /// <param name="madeOn">The day the product is made.</param>
    public static FragranceExemption Of(VocDefinition definition, bool isAirFreshener, DateOnly madeOn) => definition switch
    {
        VocDefinition.UsFederal => Federal,
        VocDefinition.OtherStates => States,
        _ when madeOn < CaliforniaChange => CaliforniaBefore,
        _ => isAirFreshener ? CaliforniaAirFresheners : CaliforniaOthers,
    };
}
