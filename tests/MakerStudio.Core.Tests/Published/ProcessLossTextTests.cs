using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// A study text on losses in process costing (ACCA F2 notes, section 8.2, read on examw.com): 1,000 units in for
/// 4,500, normal loss 10 %, 860 out. A unit is 5 of the expected 900; good output 4,300, abnormal loss 40 units for 200.
/// </summary>
public class ProcessLossTextTests
{
    [Fact]
    public void AbnormalLoss_IsValuedAsGoodOutput()
    {
        var process = BatchRollUp.Of(new(
            [new(Guid.NewGuid(), "Input", "any", 1000m, 4.5m)], [], 0m, 0m, 0m, 0m, 1000, 100, 0, 1000m, 1000m, 0m, 40));
        Assert.Equal(860, process.Saleable);
        Assert.Equal(5m, process.PerSaleable);
        Assert.Equal(4300m, process.InStock);
        Assert.Equal(200m, process.Expensed);
    }
}
