using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class NetRealisableTests
{
    /// <summary>A decimal can be a zero with a minus, as −1 × 0.0 is; stock that cost nothing is no fault.</summary>
    [Fact]
    public void Of_CostThatIsAZeroWithAMinus_IsCarriedAtNothing()
    {
        var zero = -1m * 0.0m;
        Assert.True(decimal.IsNegative(zero));

        var stock = NetRealisable.Of(2m, zero, new RealisableEstimate(3m, 0m, 0m), zero);

        Assert.Equal((0m, 0m), (stock.CarriedAt, stock.WriteDown));
        Assert.Throws<ArgumentOutOfRangeException>(() => NetRealisable.Of(2m, -0.01m, new RealisableEstimate(3m, 0m, 0m)));
    }
}
