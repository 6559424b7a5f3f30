using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Today;

public class StudioPulseTests
{
    [Fact]
    public async Task Read_WhatAsksForAHand_IsCountedByRoom()
    {
        await using var studio = await TestStudio.NewAsync();
        var pulse = studio.Get<StudioPulse>();
        await studio.RestingBatchAsync();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        await studio.LotAsync(oil, "N-5", 214m, 0.0885m, retest: new DateOnly(2026, 10, 25));
        await studio.LotAsync(oil, "N-6", 500m, 0.0885m, status: LotStatus.Quarantine);
        await studio.LotAsync(oil, "N-8", 500m, 0.0885m, expires: new DateOnly(2027, 10, 25));

        var now = (await pulse.ReadAsync())!;
        Assert.Equal(("Quince Yard Studio", 0, 2), (now.StudioName, now.CuringAsks, now.StoreroomAsks));

        studio.Clock.Advance(TimeSpan.FromHours(48));
        Assert.Equal(1, (await pulse.ReadAsync())!.CuringAsks);
    }
}
