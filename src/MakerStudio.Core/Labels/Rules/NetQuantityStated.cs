using System.Globalization;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Metric in Europe, with the sign ℮ where the maker says so; both unit systems in the US.</summary>
public sealed class NetQuantityStated : LabelRule
{
    private const decimal Thousand = 1000m;

    /// <summary>A space that no line breaks at.</summary>
    private const string Together = "\u00a0";

    public override string Key => "net-quantity";

    public override string Title => "Net quantity";

    public override IReadOnlyList<Citation> Sources { get; } =
        [new("CLP Art. 17(1)(b); Directive 76/211/EEC, Annex I 3.1", DataStatus.Memory), NetQuantity.Source];

    public override LabelExample Example => new(
        "100 mL in the US", LabelExamples.UsSpray, ElementState.There, NetQuantity.OfLiquid(100m).Replace(" ", Together, StringComparison.Ordinal));

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        string text = facts.IsUnitedStates ? facts.Net.IsVolume ? NetQuantity.OfLiquid(facts.Net.Amount) : NetQuantity.OfSolid(facts.Net.Amount) : Metric(facts);
        return There($"size, {Amount(facts.Net)}", [LabelText.Of(text.Replace(" ", Together, StringComparison.Ordinal), isBold: true)]);
    }

    private static string Metric(LabelFacts facts) => facts.Wording.ShowsEMark ? $"{Amount(facts.Net)} ℮" : Amount(facts.Net);

    private static string Amount(NetContent net) => net.Amount < Thousand
        ? $"{Number(net.Amount)} {(net.IsVolume ? "mL" : "g")}"
        : $"{Number(net.Amount / Thousand)} {(net.IsVolume ? "L" : "kg")}";

    private static string Number(decimal amount) => amount.ToString("0.###", CultureInfo.InvariantCulture);
}
