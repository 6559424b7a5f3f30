namespace MakerStudio.Core.Workings;

/// <summary>
/// Finds where a function takes a value: false position with the Illinois correction, and a plain halving every third
/// step so that it is never slow. Some ten evaluations where halving alone needs fifty.
/// </summary>
internal static class Root
{
    private const int MostSteps = 200;
    private const int HalveEvery = 3;

    /// <summary>Two steps this near each other, relative to the interval's ends, are the same.</summary>
    private const double Same = 1e-15;

    /// <summary>Where a rising function takes a value; the nearer end where it takes it nowhere in between.</summary>
    internal static double Rising(Func<double, double> function, double value, double low, double high)
    {
        double atLow = function(low) - value;
        double atHigh = function(high) - value;
        if (atLow >= 0)
        {
            return low;
        }

        if (atHigh <= 0)
        {
            return high;
        }

        double last = double.NaN;
        for (int step = 1; step <= MostSteps; step++)
        {
            double middle = low + ((high - low) / 2);
            double x = step % HalveEvery == 0 ? middle : ((low * atHigh) - (high * atLow)) / (atHigh - atLow);
            x = x > low && x < high ? x : middle;
            double at = function(x) - value;
            if (at == 0 || Math.Abs(x - last) <= Same * (Math.Abs(low) + Math.Abs(high)) || middle <= low || middle >= high)
            {
                return x;
            }

            // The end that stays a second time counts half, so that the next step passes the root.
            if (at < 0)
            {
                atHigh = last <= low ? atHigh / 2 : atHigh;
                (low, atLow) = (x, at);
            }
            else
            {
                atLow = last >= high ? atLow / 2 : atLow;
                (high, atHigh) = (x, at);
            }

            last = x;
        }

        return last;
    }
}
