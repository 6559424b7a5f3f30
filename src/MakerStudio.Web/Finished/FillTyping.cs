using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Finished;

/// <summary>A filling as its fields hold it; grams, counts and minutes.</summary>
public sealed class FillTyping
{
    public decimal? ToFilling { get; set; }
    public decimal? Fill { get; set; }
    public decimal? Filled { get; set; }
    public decimal? Rejected { get; set; } = 0m;
    public decimal? Retained { get; set; } = 0m;
    public List<decimal> Weights { get; } = [];
    public decimal? Minutes { get; set; }
    public DateOnly? BestBefore { get; set; }
    public string? Note { get; set; }

    /// <summary>Starts from what was kept, else from the planned set point.</summary>
    public static FillTyping From(FillForm form)
    {
        if (form.Draft?.Typed is not { } kept)
        {
            return new FillTyping { Fill = form.FillMilligrams / 1000m };
        }

        var typing = new FillTyping
        {
            ToFilling = kept.ToFillingGrams, Fill = kept.FillGrams, Filled = kept.Filled, Rejected = kept.Rejected, Retained = kept.Retained,
            Minutes = kept.LabourMinutes, BestBefore = kept.BestBefore, Note = kept.Note,
        };
        typing.Weights.AddRange(kept.CheckWeightsGrams);
        return typing;
    }

    public RecordFill Request(Guid batchId, Guid requestId) => new()
    {
        RequestId = requestId, BatchId = batchId, ToFillingGrams = ToFilling, FillGrams = Fill, Filled = Whole(Filled), Rejected = Whole(Rejected) ?? 0,
        Retained = Whole(Retained) ?? 0, CheckWeightsGrams = [.. Weights], LabourMinutes = Minutes, BestBefore = BestBefore, Note = string.IsNullOrWhiteSpace(Note) ? null : Note.Trim(),
    };

    // The field takes no decimals; a count too large to be one is left for the validator's words.
    private static int? Whole(decimal? count) => count is null ? null : (int)decimal.Clamp(count.Value, 0, int.MaxValue);
}
