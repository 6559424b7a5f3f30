using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Services.Accounts;

namespace MakerStudio.Services.Exchange;

/// <summary>Where the sample studio sells, and what its insurer and its landlord allow; all invented.</summary>
internal sealed class SampleMarket(Story story)
{
    public IEnumerable<SampleAct> Acts()
    {
        yield return new SampleAct(story.Day(Story.Days, 8).AddMinutes(40), async () =>
            (await story.Settings.SetWhereWeSellAsync(story.Ana, new SetWhereWeSell
            {
                Scheme = LabelScheme.EuropeanUnion,
                AllergenPercent = 0.1m,
                FlammableLimits =
                [
                    new() { Name = "Insurer, whole studio", Counts = [FlammableCategory.Category1, FlammableCategory.Category2, FlammableCategory.Category3], Most = 60, Measure = FlammableMeasure.Litres },
                    new() { Name = "Lease, workroom cabinet", Counts = [FlammableCategory.Category1, FlammableCategory.Category2], Most = 45, Measure = FlammableMeasure.Kilograms },
                ],
            })).Expect());
    }
}
