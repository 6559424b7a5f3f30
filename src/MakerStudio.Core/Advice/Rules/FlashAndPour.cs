using MakerStudio.Core.Assessing;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Scent stirred into wax hotter than its flash point gives off vapour that a flame can light. How much scent is lost is
/// another matter, and the flash point does not tell it.
/// </summary>
public sealed class FlashAndPour : AdviceRule
{
    // °C; common practice, no source.
    private const decimal HottestPour = 65m;
    private const decimal HottestAddition = 85m;

    public override string Key => "flash-and-pour";

    public override string Title => "Flash point and pour";

    public override string AppliesTo =>
        "Scent in wax whose flash point is not known, or is 85 °C or below.";

    public override string Reason =>
        "Stirred into wax at or above its flash point, scent gives off vapour that a flame or a hot ring can light.";

    public override Citation Source => new("Scent is added at 60 to 85 °C and wax poured at 50 to 65 °C", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Candle with a fragrance oil of flash point 62 °C.",
        ExampleLines.Of(new ContainerCandle(), ExampleLines.Line(ExampleLines.OilMaterial with { FlashPoint = new Celsius(62m) }, 8m), ExampleLines.Wax(92m)),
        [
            (AdviceKind.Warn, "Fig oil has a flash point of 62 °C, within the range wax is poured at. No flame and no hot ring near; add it at the lowest temperature the wax maker gives, and cover the jug."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Form != ProductForm.Wax)
        {
            yield break;
        }

        foreach (AssessedLine line in basis.Scent.Where(line => line.Material.FlashPoint is { } known && known.Degrees <= HottestAddition))
        {
            decimal flash = line.Material.FlashPoint!.Value.Degrees;
            WorkingStep workings = Step($"{line.Material.Name}: flash point {flash:0.#} °C; poured up to {HottestPour:0} °C, added up to {HottestAddition:0} °C.", line);
            yield return flash <= HottestPour
                ? Give(AdviceKind.Warn, $"{line.Material.Name} has a flash point of {flash:0.#} °C, within the range wax is poured at. No flame and no hot ring near; add it at the lowest temperature the wax maker gives, and cover the jug.", [line], -flash, workings)
                : Give(AdviceKind.Note, $"{line.Material.Name} has a flash point of {flash:0.#} °C. Add it below that: scent is often added at 60 to {HottestAddition:0} °C.", [line], -flash, workings);
        }

        AssessedLine[] unknown = [.. basis.Scent.Where(line => line.Material.FlashPoint is null)];
        if (unknown.Length > 0)
        {
            yield return Give(
                AdviceKind.Note,
                $"{Names(unknown)} {Verb(unknown, "has", "have")} no flash point. It stands in section 9 of the SDS; enter it before you choose how hot to add scent.",
                unknown,
                null,
                [.. unknown.Select(line => Step($"{line.Material.Name}: no flash point.", line))]);
        }
    }
}
