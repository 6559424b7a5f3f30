using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Bench;

/// <summary>What the sheet's script is told: recorded, a question with its answers, or a refusal in three parts.</summary>
/// <param name="Kind">"recorded", "question" or "refusal".</param>
/// <param name="Name">Which question or refusal, for the script and for tests.</param>
public sealed record BenchAnswer(
    string Kind, string? Name = null, string? Happened = null, string? Kept = null, string? ToDo = null,
    IReadOnlyList<WeighAnswer>? Answers = null, object? Value = null)
{
    public static BenchAnswer Of<T>(Outcome<T> outcome) => outcome switch
    {
        Done<T> done => new("recorded", Value: done.Value),
        Refused<T> refused => Of(refused.Why),
        _ => throw new InvalidOperationException("Neither done nor refused."),
    };

    public static BenchAnswer Of(Refusal why)
    {
        var answers = (why as WeighRefusal)?.Answers ?? [];
        return new(answers.Count > 0 ? "question" : "refusal", why.GetType().Name, why.Happened, why.Kept, why.ToDo, answers);
    }
}

/// <summary>A reading as the script sends it: text as typed, in the studio's marks, and the answers given so far.</summary>
public sealed record ReadingBody
{
    public Guid RequestId { get; init; }
    public Guid BatchId { get; init; }
    public Guid LineId { get; init; }
    public Guid? LotId { get; init; }
    public string? Text { get; init; }

    /// <summary>The container, when what was typed is gross.</summary>
    public string? Tare { get; init; }

    /// <summary>The suggested net mass, when that was the answer.</summary>
    public long? Milligrams { get; init; }
    public bool AsTyped { get; init; }
    public bool OutOfOrder { get; init; }
    public string? Over { get; init; }
    public bool ReceiptToFollow { get; init; }
    public string? EstimatedGramCost { get; init; }
    public string? Reason { get; init; }

    /// <summary>The request for the service, or why the text cannot be read.</summary>
    internal (RecordWeighing? Request, string? Why) Read(System.Globalization.CultureInfo culture)
    {
        var request = new RecordWeighing
        {
            RequestId = RequestId, BatchId = BatchId, LineId = LineId, LotId = LotId, AsTyped = AsTyped, OutOfOrder = OutOfOrder,
            Over = Enum.TryParse<OverChoice>(Over, out var choice) ? choice : OverChoice.Ask, ReceiptToFollow = ReceiptToFollow, Reason = Reason,
        };
        if (!string.IsNullOrWhiteSpace(EstimatedGramCost))
        {
            if (QuantityText.Parse(EstimatedGramCost, new(QuantityFormat.DecimalMark(culture), MaxDecimals: 8)) is not QuantityReading.Read { Unit: null } cost)
            {
                return (null, "Give the cost of one gram as a number.");
            }

            request.EstimatedUnitCost = cost.Value;
        }

        if (Milligrams is { } net)
        {
            return (request with { NetMilligrams = net }, null);
        }

        var (reading, why) = Grams(Text, culture);
        if (why is null && !string.IsNullOrWhiteSpace(Tare))
        {
            (var tare, why) = Grams(Tare, culture);
            return (request with { GrossMilligrams = reading, TareMilligrams = tare }, why);
        }

        return (request with { NetMilligrams = reading }, why);
    }

    private static (long Milligrams, string? Why) Grams(string? text, System.Globalization.CultureInfo culture) =>
        QuantityText.Parse(text, new(QuantityFormat.DecimalMark(culture), "g")) switch
        {
            QuantityReading.Read { Unit: not null, AmountUnit: null } => (0, "Type a mass."),
            QuantityReading.Read read => AmountConversion.ToStock(read.Value, read.AmountUnit ?? AmountUnit.Gram, StockUnit.Gram, null) switch
            {
                ConversionResult.Converted converted => (converted.Amount.Units, null),
                ConversionResult.NeedsDensity => (0, "Weigh in grams here: a volume needs a density."),
                _ => (0, "Type a mass."),
            },
            QuantityReading.Asks asks => (0, asks.Question),
            QuantityReading.Unreadable unreadable => (0, unreadable.Why),
            _ => (0, "Type a mass."),
        };
}
