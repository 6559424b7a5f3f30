namespace MakerStudio.Core.Products;

/// <summary>The kinds of product the studio makes, in the order shown.</summary>
public static class ProductKinds
{
    public static IReadOnlyList<ProductKind> All { get; } =
    [
        new RoomSprayAlcohol(),
        new RoomSprayWater(),
        new LinenSpray(),
        new ReedDiffuser(),
        new ContainerCandle(),
        new WaxMelt(),
        new Sachet(),
        new PreBlend(),
    ];

    private static readonly Dictionary<string, ProductKind> ByKey = All.ToDictionary(kind => kind.Key, StringComparer.Ordinal);

    /// <exception cref="KeyNotFoundException">No kind has this key.</exception>
    public static ProductKind Get(string key) =>
        Find(key) ?? throw new KeyNotFoundException("No product kind has this key.");

    public static ProductKind? Find(string key) => ByKey.GetValueOrDefault(key);
}
