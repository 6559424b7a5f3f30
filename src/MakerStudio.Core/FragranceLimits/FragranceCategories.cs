using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>A category of the fragrance standards since their 49th amendment.</summary>
/// <param name="Keys">As certificates write them: "10A". Several where the table has them in one row.</param>
/// <param name="HomeFragrance">What of home fragrance goes there; empty where nothing does. From memory of the guidance unless a kind of product says otherwise.</param>
public sealed record FragranceCategory(IReadOnlyList<string> Keys, string Title, string HomeFragrance, string OtherExamples, Source Source);

/// <summary>Where a kind of product goes among the categories.</summary>
/// <param name="As">The product as the guidance calls it.</param>
public sealed record FragrancePlacement(string Category, string As, Source Source)
{
    private static readonly Source Guidance = new("Guidance for the use of IFRA Standards (2020), list of products", DataStatus.Memory);
    private static readonly Source SupplierPage = new("a fragrance supplier's page on the categories", DataStatus.Secondary);

    public static FragrancePlacement RoomSpray { get; } = new(FragranceCategories.Spray, "manual air freshener spray", SupplierPage);

    public static FragrancePlacement Spray { get; } = new(FragranceCategories.Spray, "household spray", Guidance);

    public static FragrancePlacement Textile { get; } = new(FragranceCategories.HandContact, "linen and fabric spray", Guidance);

    public static FragrancePlacement ReedDiffuser { get; } = new(FragranceCategories.HandContact, "reed diffuser", SupplierPage);

    public static FragrancePlacement Sachet { get; } = new(FragranceCategories.HandContact, "sachet, pot-pourri", Guidance);

    public static FragrancePlacement Candle { get; } = new(FragranceCategories.NoSkinContact, "candle", SupplierPage);

    public static FragrancePlacement WaxMelt { get; } = new(FragranceCategories.NoSkinContact, "wax melt", Guidance);
}

public static class FragranceCategories
{
    public const string HandContact = "10A";
    public const string Spray = "10B";
    public const string NoSkinContact = "12";

    private static readonly string[] Prefixes = ["CATEGORY", "CAT.", "CAT"];

    public static IReadOnlyList<FragranceCategory> All { get; } =
    [
        .. DataTable.Read("fragrance_categories.csv").Select(row => new FragranceCategory(
            row.Text("category").Split('/'), row.Text("title"), row.Text("home_fragrance"), row.Text("other_examples"), row.Source())),
    ];

    /// <summary>Null where no row has the key.</summary>
    public static FragranceCategory? Find(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        string plain = Plain(key);
        return All.FirstOrDefault(category => category.Keys.Contains(plain, StringComparer.Ordinal));
    }

    /// <summary>"10A" of "10a" or "Category 10 A"; null where there is no such category.</summary>
    public static string? KeyOf(string? typed) => string.IsNullOrWhiteSpace(typed) || Find(typed) is null ? null : Plain(typed);

    /// <summary>Every key alone, "7A" and "7B" apart, in the order of the standards.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. All.SelectMany(category => category.Keys)];

    /// <summary>Where a key stands in that order; unknown ones first.</summary>
    public static int Place(string key) => Keys.ToList().IndexOf(key);

    /// <summary>The figure for a category, whether it is written "10A", "10a" or "Category 10 A"; null where it is missing.</summary>
    internal static decimal? In(IReadOnlyDictionary<string, decimal> byCategory, string category)
    {
        if (byCategory.TryGetValue(category, out decimal value))
        {
            return value;
        }

        foreach ((string key, decimal each) in byCategory)
        {
            if (Plain(key) == category)
            {
                return each;
            }
        }

        return null;
    }

    /// <summary>"10A" for "Cat. 10 a".</summary>
    internal static string Plain(string key)
    {
        string text = key.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        string? prefix = Array.Find(Prefixes, each => text.StartsWith(each, StringComparison.Ordinal));
        return prefix is null ? text : text[prefix.Length..];
    }
}
