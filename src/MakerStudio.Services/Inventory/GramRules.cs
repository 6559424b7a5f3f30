using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>What every typed number of grams must be: the ledger keeps whole milligrams.</summary>
internal static class GramRules
{
    public const string TooFine = "Finer than a milligram cannot be recorded.";

    /// <summary>Whole milligrams; true for nothing typed.</summary>
    public static bool AreWhole(decimal? grams) => grams is null || decimal.IsInteger(grams.Value * Mass.MilligramsPerGram);

    /// <inheritdoc cref="AreWhole(decimal?)"/>
    public static bool AreWhole(decimal grams) => AreWhole((decimal?)grams);
}
