using System.Globalization;
using System.Text;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests.Inventory.Finished;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

/// <summary>What holds for every file, whatever is in it. Memory is measured here, so nothing else runs beside it.</summary>
[Collection(nameof(SalesFilesTests))]
public class BroughtFilesTests(ITestOutputHelper output)
{
    private const long Mebibyte = 1024 * 1024;

    /// <summary>Live memory the longest file may need beside what was there before; stated in the guide.</summary>
    private const long MostLive = 192 * Mebibyte;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Add_Utf8WithOrWithoutItsMark_KeepsAccents(bool withMark)
    {
        await using var studio = await TestStudio.NewAsync();

        var file = (await studio.SendAsync(BringInKind.Materials, "Material\tKind\r\nRosenöl, fein\tEssential oil\r\n", new UTF8Encoding(withMark))).Expect();

        Assert.StartsWith("Rosenöl, fein, Essential oil", (await studio.Get<BroughtFiles>().PreviewAsync(file.FileId))!.Rows[0].What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_AnotherEncoding_IsToldFromUtf8AndNotGuessed()
    {
        await using var studio = await TestStudio.NewAsync();
        var latin = Encoding.Latin1.GetBytes("Material,Kind\nDPG,Solvent\nRosenöl,Essential oil\n");

        Assert.Equal(3, Assert.IsType<NotUtf8>((await studio.SendAsync(BringInKind.Materials, latin)).Refusal).Line);
        Assert.Equal("UTF-16", Assert.IsType<NotUtf8>((await studio.SendAsync(BringInKind.Materials, "Material,Kind\n", Encoding.Unicode)).Refusal).Is);
        Assert.Equal("a workbook or an archive", Assert.IsType<NotUtf8>((await studio.SendAsync(BringInKind.Materials, [0x50, 0x4B, 3, 4, 0, 0])).Refusal).Is);
        Assert.IsType<NotUtf8>((await studio.SendAsync(BringInKind.Materials, [.. Encoding.UTF8.GetBytes("Material,Kind\nRosen"), 0xC3])).Refusal); // cut in the middle of a letter
        await using var db = studio.Db();
        Assert.Empty(await db.BroughtFiles.ToListAsync());
    }

    [Theory]
    [InlineData("", "The column “Material” is not there.")]
    [InlineData("Material\nDPG\n", "The column “Kind” is not there.")]
    [InlineData("Material,Kind,Name\nDPG,Solvent,DPG\n", "The column “Material” stands there twice.")]
    [InlineData("Material,Kind,Density (kg/m³)\nDPG,Solvent,1023\n", "The column “Density (kg/m³)” is wanted as “Density (g/mL)”: change its numbers to that, then the heading.")]
    [InlineData("Material,Kind\n", "There are no rows under the headings.")]
    [InlineData("Material,Kind\n\"DPG,Solvent\nEthanol,Solvent\n", "Line 2: The line cannot be read: a quotation mark is open")]
    public async Task Add_NothingCanBeRead_SaysWhyAndKeepsNothing(string text, string why)
    {
        await using var studio = await TestStudio.NewAsync();

        var refused = Assert.IsType<FileUnreadable>((await studio.SendAsync(BringInKind.Materials, text)).Refusal);

        Assert.Contains(refused.Problems, p => p.StartsWith(why, StringComparison.Ordinal));
        await using var db = studio.Db();
        Assert.Empty(await db.BroughtFiles.ToListAsync());
    }

    [Fact]
    public async Task Add_TooLargeOrTooLong_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();

        Assert.Equal("This file is larger than 4 MB.", (await studio.SendAsync(BringInKind.Materials, new byte[AddBroughtFile.MostBytes + 1])).Refusal!.Happened);
        var long_ = "Material,Kind\n" + string.Concat(Enumerable.Range(0, 5_001).Select(n => $"M{n},Solvent\n"));
        Assert.Contains("A file holds at most 5,000 rows. Part it in two.", Assert.IsType<FileUnreadable>((await studio.SendAsync(BringInKind.Materials, long_)).Refusal).Problems);
    }

    [Fact]
    public async Task Add_FileThatWasNeverBroughtIn_IsForgottenInTime()
    {
        await using var studio = await TestStudio.NewAsync();
        var left = (await studio.SendAsync(BringInKind.Materials, "Material,Kind\nDPG,Solvent\n")).Expect();
        studio.Clock.Advance(BroughtFiles.KeptUntaken + TimeSpan.FromHours(1));

        await studio.BringInAsync(BringInKind.Materials, "Material,Kind\nDPG,Solvent\n");
        studio.Clock.Advance(BroughtFiles.KeptUntaken + TimeSpan.FromHours(1));
        await studio.SendAsync(BringInKind.Materials, "Material,Kind\nDPM,Solvent\n");

        Assert.Null(await studio.Get<BroughtFiles>().PreviewAsync(left.FileId));
        await using var db = studio.Db();
        Assert.Equal(2, await db.BroughtFiles.CountAsync());
    }

    [Fact]
    public async Task WriteRefused_GivesTheRowsBackWithTheReasonLast()
    {
        await using var studio = await TestStudio.NewAsync();
        var seen = await studio.LookAsync(BringInKind.Materials, "Colour;Material;Kind;Density (g/mL)\nblue;Good;Solvent;0,9\n\"red; dark\";\"Fig \"\"oil\"\"\";Perfume;0,98\n");

        var lines = (await studio.RefusedAsync(seen.FileId)).Split('\n');

        Assert.Equal("Colour,Material,Kind,Density (g/mL),Line in the file,Refused because", lines[0]);
        Assert.StartsWith("\"red; dark\",\"Fig \"\"oil\"\"\",Perfume,\"0,98\",3,\"Kind: “Perfume” is none of: ", lines[1], StringComparison.Ordinal);
        Assert.Equal("", lines[2]);
    }

    [Fact]
    public async Task WriteEmpty_HasEveryHeadingAndComesBackWithoutAWord()
    {
        await using var studio = await TestStudio.NewAsync();
        foreach (var kind in Enum.GetValues<BringInKind>())
        {
            using var empty = new MemoryStream();
            await studio.Get<BroughtFiles>().WriteEmptyAsync(kind, empty);

            Assert.Equal(["There are no rows under the headings."], Assert.IsType<FileUnreadable>((await studio.SendAsync(kind, empty.ToArray())).Refusal).Problems);
        }
    }

    [Fact]
    public async Task TakeIn_TwoPeopleAtOnce_BringsItInOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var files = studio.Get<BroughtFiles>();
        var seen = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Notes\nDPG,Solvent,hers\nDPM,Solvent,\n");
        var other = await studio.LookAsync(BringInKind.Materials, "Material,Kind,Notes\nDPG,Solvent,mine\n");
        var request = new TakeInFile { FileId = seen.FileId };

        var outcomes = await Task.WhenAll(
            files.TakeInAsync(studio.Ana, request), files.TakeInAsync(studio.Ana, request), files.TakeInAsync(studio.Bo, new TakeInFile { FileId = seen.FileId }),
            files.TakeInAsync(studio.Bo, new TakeInFile { FileId = other.FileId }));

        // One of the files came first; the other then finds DPG as it is not written there, and Ana's second press is her first.
        Assert.InRange(outcomes.Count(o => o.Refusal is null), 1, 2);
        var names = (await studio.Get<Materials>().FormsAsync()).Select(m => m.Name).ToList();
        Assert.Equal(names.Count, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(outcomes[3].Refusal is null ? 1 : 2, names.Count);
    }

    [Fact]
    public async Task TakeIn_LongestFiles_StayUnderTheMemoryBound()
    {
        await using var studio = await TestStudio.NewAsync();
        var note = new string('n', 600);
        var materials = new StringBuilder("Material,Kind,Density (g/mL),Density at (°C),Suppliers,Supplier codes,Notes\n");
        var lots = new StringBuilder("Lot,Material,Amount,Unit,Landed,Received,Supplier,Supplier lot\n");
        for (var n = 1; n <= 5_000; n++)
        {
            materials.Append(CultureInfo.InvariantCulture, $"Oil {n},Essential oil,0.9{n % 10}5,20,Supplier {n % 50},S-{n},{note}\n");
            lots.Append(CultureInfo.InvariantCulture, $"N-{n},Oil {n},{n}.5,g,6{n % 10}.25,2026-09-01,Supplier {n % 50},L{n}\n");
        }

        var before = GC.GetTotalMemory(forceFullCollection: true);
        using var done = new CancellationTokenSource();
        var peak = PeakAsync(done.Token);
        var took = System.Diagnostics.Stopwatch.StartNew();
        await studio.BringInAsync(BringInKind.Materials, materials.ToString());
        await studio.BringInAsync(BringInKind.Lots, lots.ToString());
        took.Stop();
        await done.CancelAsync();
        var live = await peak - before;

        output.WriteLine($"{materials.Length / (double)Mebibyte:0.0} MiB of materials, {lots.Length / (double)Mebibyte:0.0} of lots: {live / (double)Mebibyte:0.0} MiB live at most, {took.Elapsed.TotalSeconds:0.0} s");
        Assert.InRange(live, 0, MostLive);
        Assert.Equal(5_000, (await studio.Get<Lots>().AllAsync()).Count);
        var report = await studio.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, string.Join('\n', report.Differences.Take(3)));
    }

    /// <summary>The most that was still in use after a collection, looked at again and again.</summary>
    private static Task<long> PeakAsync(CancellationToken until) => Task.Run(() =>
    {
        var most = 0L;
        while (!until.IsCancellationRequested)
        {
            most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true));
            until.WaitHandle.WaitOne(200);
        }

        return most;
    });
}
