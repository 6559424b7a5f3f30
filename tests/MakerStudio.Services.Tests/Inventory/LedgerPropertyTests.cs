using System.Diagnostics;
using System.Globalization;
using MakerStudio.Services.Inventory;
using Xunit.Abstractions;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>
/// Ten thousand acts, sensible and not, beside a model that knows nothing of the database: what the model says is on
/// hand is what the balance says and what the movements add up to, a refusal leaves no trace, and at the end nothing is
/// lost in the books by any of the four methods: received + put in = stock + in work + finished + cost of sales + expensed.
/// </summary>
public class LedgerPropertyTests(ITestOutputHelper output)
{
    private const int Acts = 10_000;
    private const int ActsBetweenChecks = 1_000;

    [Fact]
    public async Task OnHand_AfterTenThousandRandomActs_EqualsTheSumOfMovements()
    {
        var start = int.TryParse(Environment.GetEnvironmentVariable("STUDIO_RANDOM_START"), CultureInfo.InvariantCulture, out var given)
            ? given
            : Random.Shared.Next();
        output.WriteLine($"Random start {start}; run again with STUDIO_RANDOM_START={start}");
        await using var studio = await TestStudio.NewAsync();
        var walk = await LedgerWalk.NewAsync(studio, new Random(start));
        await walk.OpenShopAsync();
        var watch = Stopwatch.StartNew();
        for (var n = 1; n <= Acts; n++)
        {
            await walk.StepAsync();
            if (n % ActsBetweenChecks == 0)
            {
                output.WriteLine($"{n} acts after {watch.Elapsed.TotalSeconds:0.0} s");
                await walk.CheckAsync($"start {start}, after {n} acts");
            }
        }

        output.WriteLine($"{Acts} acts in {watch.Elapsed.TotalSeconds:0.0} s: {walk.Done} done, {walk.Refused} refused");
        output.WriteLine(walk.Whys);
        output.WriteLine($"{walk.Weighed} weighings, {walk.TakenBack} taken back, {walk.Filled} fillings");
        Assert.InRange(walk.Refused, Acts / 10, Acts * 9 / 10);
        Assert.True(walk is { Weighed: > 50, TakenBack: > 5, Filled: > 0 }, "The walk hardly touched the bench.");
        output.WriteLine(string.Join(", ", walk.GoodsDone.OrderBy(d => d.Key, StringComparer.Ordinal).Select(d => $"{d.Key} {d.Value}")));
        string[] must = ["sold", "kits sold", "came back", "placed", "reported", "set aside", "taken back", "assembled", "kits undone", "written down", "lost", "ahead", "matched"];
        Assert.True(must.All(m => walk.GoodsDone.GetValueOrDefault(m) > 0), $"start {start}: some act was never done");
        // Every balance, every cost, and the books by all four methods: nothing is lost.
        var report = await studio.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, $"start {start}: {string.Join('\n', report.Differences.Take(5))}");
        Assert.True(report.Checks.Count(c => c.Of == "entries of the books") == 4, "The books were not replayed by all four methods.");
    }
}
