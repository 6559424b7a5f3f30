using MakerStudio.Core.Allergens;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>The declarable names: Reg. (EC) 1223/2009, Annex III, and Reg. (EU) 2023/1545. Data/README.md, V2 and M by row.</summary>
public class AllergenListTests
{
    [Fact]
    public void Lists_EveryRowOfTheReference_IsInTheTable() => Assert.All(PublishedTable.Rows("eu_fragrance_allergens.csv", 82), row =>
    {
        FragranceAllergen found = Assert.Single(FragranceAllergens.All, each => each.Name == row["inci_name"].Split(" (")[0]);
        Assert.Equal(row["list"].StartsWith("26", StringComparison.Ordinal) ? AllergenList.Of2003 : AllergenList.Of2023, found.List);
        Assert.Equal(row["declarable_in_cosmetics_now"].StartsWith("no", StringComparison.Ordinal), found.IsProhibitedInCosmetics);
        Assert.All(row["cas"].Replace(" and isomers", "", StringComparison.Ordinal).Split("; "), cas => Assert.Same(found, FragranceAllergens.Find(cas)));
        Assert.Equal(row["status"].StartsWith("V2 name", StringComparison.Ordinal) ? DataStatus.Secondary : DataStatus.Memory, found.NameSource.Status);
    });

    /// <summary>26 less the two prohibited, and 56: 80 names (read in advisers' pages, V2).</summary>
    [Fact]
    public void Lists_Have26And56Names()
    {
        Assert.Equal(26, FragranceAllergens.All.Count(each => each.List == AllergenList.Of2003));
        Assert.Equal(56, FragranceAllergens.All.Count(each => each.List == AllergenList.Of2023));
        Assert.Equal(80, FragranceAllergens.All.Count(each => !each.IsProhibitedInCosmetics));
    }

    [Fact]
    public void Numbers_AgreeWithTheirCheckDigitsAndStandOnce()
    {
        string[] numbers = [.. FragranceAllergens.All.SelectMany(each => each.Cas)];
        Assert.All(numbers, cas => Assert.True(CasNumber.TryParse(cas, out _, out string? why), why));
        Assert.Equal(numbers.Length, numbers.Distinct().Count());
    }
}
