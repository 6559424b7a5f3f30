using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Storeroom;
using MakerStudio.Web.Tests.Shell;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class CoverPageTests : ShellContext
{
    private static readonly DateOnly Today = new(2026, 10, 26);

    /// <param name="grams">Available.</param>
    private static StockRow Row(string name, long grams, decimal usePerDay, int? leadDays) => new(
        Guid.CreateVersion7(), name, MaterialKind.FragranceOil, StockUnit.Gram, grams * 1000, 0, 0, 0, 0, usePerDay, leadDays, null, null, false, Today, []);

    [Fact]
    public void ByCover_ShortestAgainstItsLeadTime_StandsFirstAndTheUnusedAreLeftOut()
    {
        // 30 days and 28 to get more; 20 days and 5; 100 days, lead not known; not used.
        var rows = StoreroomWords.ByCover([Row("Linen", 100, 1m, null), Row("Fig", 20, 1m, 5), Row("Dye", 100, 0m, 8), Row("Quince", 30, 1m, 28)]);

        Assert.Equal(["Quince", "Fig", "Linen"], rows.Select(r => r.Name));
    }

    [Fact]
    public void Lead_ShortOfItsLeadTime_NamesTheFirstAndSaysOrderToday()
    {
        var lead = Render<CoverLead>(p => p.Add(l => l.Rows, [Row("Quince", 30, 1m, 28), Row("Fig", 6, 1m, 10)]));

        Assert.Equal("Fig: 6.0 g left after reservations, 6 days of use, 10 days to get more. Order today.", System.Text.RegularExpressions.Regex.Replace(string.Concat(lead.Nodes.Select(n => n.TextContent)).Trim(), @"\s+", " "));
    }

    [Fact]
    public void Lead_NothingShort_SaysSo() =>
        Assert.Contains("Everything in use lasts longer", Render<CoverLead>(p => p.Add(l => l.Rows, [Row("Quince", 30, 1m, 28)])).Markup, StringComparison.Ordinal);

    [Fact]
    public void Months_OfADayCount_AreAverageMonths() => Assert.Equal(2m, Row("Fig", 60_875, 1000m, 5).CoverMonths);
}
