using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Vapour of flammable liquids runs along benches and finds flames.
/// </summary>
public sealed class FlammableHeat : AdviceRule
{
    public override string Key => "flammable-heat";

    public override string Title => "Keep flame and heat away";

    public override string AppliesTo =>
        "A liquid with a flash point of 60 °C or below; where none can be worked out, one of its materials with such a flash point.";

    public override string Reason =>
        "Its vapour lights at a flame, a spark or a hot ring, also at some distance.";

    public override Citation Source => new("CLP Annex I, Table 2.6.1: flammable up to 60 °C", DataStatus.Read);

    public override AdviceExample Example => new(
        "Alcohol room spray with a measured flash point of 17 °C.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Alcohol(88m)) with { Measured = new(FlashPoint: new Celsius(17m)) },
        [
            (AdviceKind.Note, "It burns: flash point 17 °C. No flame, no static and no hot plate near it; ventilate, and warm it, if ever, in warm water away from the source of heat."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Form != ProductForm.Liquid)
        {
            yield break;
        }

        AssessedLine[] burning = [.. basis.Lines.Where(line => line.Material.FlashPoint is { } own && IsFlammable(own))];
        (decimal Celsius, string Of)? found = basis.FlashPoint switch
        {
            FlashPointResult.Measured measured when IsFlammable(measured.Value) => (measured.Value.Degrees, "flash point"),
            FlashPointResult.Estimated estimate when IsFlammable(estimate.Value) => (estimate.Value.Degrees, "flash point, estimated,"),
            FlashPointResult.Unknown or null when burning.Length > 0 => (burning.Min(line => line.Material.FlashPoint!.Value.Degrees), $"lowest flash point of its materials, {Names(burning)},"),
            _ => null,
        };
        if (found is { } flash)
        {
            yield return Give(
                AdviceKind.Note,
                $"It burns: {flash.Of} {flash.Celsius:0} °C. No flame, no static and no hot plate near it; ventilate, and warm it, if ever, in warm water away from the source of heat.",
                [],
                null,
                Step($"{flash.Of} {flash.Celsius:0.0} °C; limit {FlammableBands.HighLimit:0} °C."));
        }
    }

    private static bool IsFlammable(Celsius flash) => flash.Degrees <= (decimal)FlammableBands.HighLimit;
}
