using MakerStudio.Core.Labels;

namespace MakerStudio.Services.Labels;

/// <summary>Lays a label out with its square code: for the page's picture and for the PDF alike.</summary>
public static class LabelPress
{
    public static LabelLayout LayOut(LabelFacts facts, LabelStock stock)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return LabelLayout.Of(LabelContent.Of(facts), stock, facts.Batch?.Address is { Length: > 0 } address ? SquareCodes.Of(address) : null);
    }
}
