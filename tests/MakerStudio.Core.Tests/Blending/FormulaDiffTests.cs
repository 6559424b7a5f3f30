using MakerStudio.Core.Blending;

namespace MakerStudio.Core.Tests.Blending;

public class FormulaDiffTests
{
    private static readonly Guid Fragrance = Guid.CreateVersion7();
    private static readonly Guid Dpg = Guid.CreateVersion7();
    private static readonly Guid Ethanol = Guid.CreateVersion7();
    private static readonly Guid Water = Guid.CreateVersion7();

    [Fact]
    public void Between_LowerLoad_ShowsBothAmounts() => Assert.Equal(
        [new LineChange.Amount(Fragrance, "Fig", 12.00m, 11.10m), new LineChange.Amount(Ethanol, "Ethanol", 83.00m, 83.90m)],
        FormulaDiff.Between([Fig(12.00m), Solvent(5), Alcohol(83.00m)], [Fig(11.10m), Solvent(5), Alcohol(83.90m)]));

    [Fact]
    public void Between_AddedAndRemoved_NameTheirPlaces() => Assert.Equal(
        [new LineChange.Removed(Dpg, "DPG", 5, 2), new LineChange.Added(Water, "Water", 5, 3)],
        FormulaDiff.Between([Fig(12), Solvent(5), Alcohol(83)], [Fig(12), Alcohol(83), new(Water, "Water", 5)]));

    [Fact]
    public void Between_LastLineMovedFirst_IsOneMoveNotThree() => Assert.Equal(
        [new LineChange.Moved(Ethanol, "Ethanol", 3, 1)],
        FormulaDiff.Between([Fig(12), Solvent(5), Alcohol(83)], [Alcohol(83), Fig(12), Solvent(5)]));

    [Fact]
    public void Between_LinesAddedAndRemovedAhead_MoveNobody() => Assert.DoesNotContain(
        FormulaDiff.Between([Solvent(5), Fig(12), Alcohol(83)], [new(Water, "Water", 5), Fig(12), Alcohol(83)]),
        change => change is LineChange.Moved);

    [Fact]
    public void Between_OneMaterialOnTwoLines_PairsThemInOrder() => Assert.Equal(
        [new LineChange.Amount(Ethanol, "Ethanol", 43, 40)],
        FormulaDiff.Between([Alcohol(40), Fig(17), Alcohol(43)], [Alcohol(40), Fig(17), Alcohol(40)]));

    [Fact]
    public void Between_Same_IsEmpty() => Assert.Empty(FormulaDiff.Between([Fig(12), Alcohol(88)], [Fig(12), Alcohol(88)]));

    private static VersionLine Fig(decimal percent) => new(Fragrance, "Fig", percent);

    private static VersionLine Solvent(decimal percent) => new(Dpg, "DPG", percent);

    private static VersionLine Alcohol(decimal percent) => new(Ethanol, "Ethanol", percent);
}
