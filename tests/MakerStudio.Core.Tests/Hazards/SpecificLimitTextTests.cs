using MakerStudio.Core.Hazards;

namespace MakerStudio.Core.Tests.Hazards;

/// <summary>Forms as CLP Annex VI Table 3 and suppliers' sheets write them.</summary>
public class SpecificLimitTextTests
{
    [Theory]
    [InlineData("Skin Sens. 1A 0.01", HazardCategory.SkinSens1A, "0.01")]
    [InlineData("Skin Sens. 1A; 0.01", null, null)]
    [InlineData("Skin Sens. 1A H317: C ≥ 0,01 %", HazardCategory.SkinSens1A, "0.01")]
    [InlineData("Eye Irrit. 2: 10 % ≤ C < 25 %", HazardCategory.EyeIrrit2, "10")]
    [InlineData("Eye Irrit. 2 from 50 %", HazardCategory.EyeIrrit2, "50")]
    [InlineData("STOT SE 1 10", HazardCategory.StotSe1, "10")]
    [InlineData("Eye Dam. 1", null, null)]
    [InlineData("Skin Sens. 1A 0", null, null)]
    [InlineData("Skin Sens. 1A 101", null, null)]
    [InlineData("nonsense 3", null, null)]
    public void Parse_OnePiece_ReadsClassAndLowEnd(string text, HazardCategory? category, string? percent)
    {
        SpecificLimitReading read = SpecificLimitText.Parse(text);

        if (category is null)
        {
            Assert.Empty(read.Limits);
            Assert.NotEmpty(read.NotRead);
            return;
        }

        Assert.Empty(read.NotRead);
        SpecificLimit limit = Assert.Single(read.Limits);
        Assert.Equal(category, limit.Category);
        Assert.Equal(decimal.Parse(percent!, System.Globalization.CultureInfo.InvariantCulture), limit.FromPercent);
    }

    [Fact]
    public void Parse_SeveralPieces_NamesThoseNotRead()
    {
        SpecificLimitReading read = SpecificLimitText.Parse("Skin Corr. 1C 0.6; what; Eye Irrit. 2 0.06");

        Assert.Equal([0.6m, 0.06m], read.Limits.Select(limit => limit.FromPercent));
        Assert.Equal(["what"], read.NotRead);
    }
}
