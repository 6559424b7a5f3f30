namespace MakerStudio.Core.Workings;

/// <summary>Halves an interval until no double lies between its ends: slow and sure.</summary>
internal static class Bisection
{
    private const int MostHalvings = 200;

    /// <summary>Where a rising function takes a value; the nearer end where it takes it nowhere in between.</summary>
    internal static double Rising(Func<double, double> function, double value, double low, double high)
    {
        if (function(low) >= value)
        {
            return low;
        }

        if (function(high) <= value)
        {
            return high;
        }

        for (int i = 0; i < MostHalvings; i++)
        {
            double middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
            {
                break;
            }

            if (function(middle) < value)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }
}
