using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory;

public class CompositionTextTests
{
    [Theory]
    [InlineData("linalool; 78-70-6; 5–10; Skin Sens. 1B H317; Eye Irrit. 2 H319", "linalool", "78-70-6", 5, 10, "Skin Sens. 1B H317; Eye Irrit. 2 H319")]
    [InlineData("linalool;78-70-6;5 - 10 %", "linalool", "78-70-6", 5, 10, null)]
    [InlineData("linalool; 1-5", "linalool", null, 1, 5, null)]
    [InlineData("d-limonene\tCAS: 5989-27-5\t227-813-5\t≥ 0,1 - < 1 %\tnot classified", "d-limonene", "5989-27-5", 0.1, 1, "not classified")]
    [InlineData("coumarin; 91-64-5; < 1 %", "coumarin", "91-64-5", 0, 1, null)]
    [InlineData("ethanol; 64-17-5; ≥ 90 %", "ethanol", "64-17-5", 90, 100, null)]
    [InlineData("vanillin; 2.5", "vanillin", null, 2.5, 2.5, null)]
    public void Read_FormsOfSheets_BecomeARow(string line, string name, string? cas, double low, double high, string? classes)
    {
        var read = CompositionText.Read(line);

        Assert.Empty(read.NotRead);
        var row = Assert.Single(read.Rows);
        Assert.Equal((name, cas, (decimal)low, (decimal)high, classes), (row.Name, row.Cas, row.LowPercent!.Value, row.HighPercent!.Value, row.Hazards.Classes));
    }

    [Theory]
    [InlineData("linalool; 78-70-6", "No range")]
    [InlineData("linalool; 78-70-5; 1-5", "should end in 6")]
    [InlineData("; 78-70-6; 1-5", "name is missing")]
    [InlineData("linalool; 78-70-6; 10-5", "No range")]
    [InlineData("linalool; 78-70-6; 1-5; Bad stuff 9", "“Bad stuff 9”")]
    public void Read_WhatIsNoRow_IsNamedWithItsLine(string line, string why)
    {
        var read = CompositionText.Read("\nbenzyl benzoate; 120-51-4; 1–5\n" + line);

        Assert.Equal(["benzyl benzoate"], read.Rows.Select(r => r.Name));
        var not = Assert.Single(read.NotRead);
        Assert.Equal(3, not.Number);
        Assert.Contains(why, not.Why, StringComparison.Ordinal);
    }
}
