using System.Text;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace MakerStudio.Services.Tests.Inventory.Finished;

/// <summary>Memory is measured here, so nothing else runs beside it.</summary>
[CollectionDefinition(nameof(SalesFilesTests), DisableParallelization = true)]
public sealed class AloneForMemory;

[Collection(nameof(SalesFilesTests))]
public class SalesFilesTests(ITestOutputHelper output)
{
    private const string Header = "date,channel,order,customer,product,size,batch,quantity,price,tax,fees\n";
    private const long Mebibyte = 1024 * 1024;

    /// <summary>Live memory an import of any length may need beside what was there before; the bound is stated in the guide.</summary>
    private const long MostLive = 64 * Mebibyte;

    private static async Task<SalesFileAdded> AddAsync(TestStudio studio, string text, Encoding? encoding = null)
    {
        var code = encoding ?? new UTF8Encoding(false);
        using var content = new MemoryStream([.. code.GetPreamble(), .. code.GetBytes(text)]);
        return (await studio.Get<SalesFiles>().AddAsync(studio.Ana, new AddSalesFile { Name = "web shop.csv" }, content)).Expect();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Post_EveryLineGood_SellsEachByBatchFirstExpiredFirst(bool withMark)
    {
        await using var studio = await TestStudio.NewAsync();
        var late = await studio.FilledBatchAsync();
        await studio.AlsoFilledAsync("RS-7", late, 3, new DateOnly(2027, 3, 1));
        var file = await AddAsync(studio, Header
            + "2026-10-20,Web shop,1001,Ida Marsh,Fig,100 mL,,2,22.00,20,0.94\n2026-10-21,Web shop,1002,\"Moss, Pim\",fig,,,2,\"22,00\",20,\n22/10/2026,Web shop,1003,Ida Marsh,,,RS-1,1,20,20,\n",
            new UTF8Encoding(withMark));
        var files = studio.Get<SalesFiles>();

        var preview = (await files.PreviewAsync(file.FileId))!;
        Assert.Equal((3, 0, 5, 108m), (preview.Lines, preview.Rejected, preview.Units, preview.Tags));
        Assert.Equal(["RS-7 × 2 at 22.00", "RS-7 × 1, RS-1 × 1 at 22.00", "RS-1 × 1 at 20.00"], preview.Rows.Select(r => r.Does));

        var posted = (await files.PostAsync(studio.Ana, new PostSalesFile { FileId = file.FileId })).Expect();

        Assert.Equal((3, 5), (posted.Sales, posted.Units));
        Assert.Equal(44, await studio.UnitsAsync(late));
        var sales = await studio.Get<Sales>().ListAsync();
        Assert.Equal(["1001", "1002", "1003"], sales.Select(s => s.Reference).Order());
        Assert.Equal(["Ida Marsh", "Moss, Pim"], (await studio.Get<Customers>().ListAsync()).Select(c => c.Name));
        Assert.Equal(108m / 1.2m, sales.Sum(s => s.Net), 6);
        Assert.Contains(await studio.Get<FinishedGoods>().HoldersAsync("RS-1"), h => h is { Who: "Moss, Pim", Units: 1 });
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
        Assert.IsType<Because>((await files.PostAsync(studio.Ana, new PostSalesFile { FileId = file.FileId })).Refusal);
    }

    [Fact]
    public async Task Add_AWeekAfterAFileNobodyRecorded_ForgetsThatOneAndKeepsTheRecorded()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.FilledBatchAsync();
        var files = studio.Get<SalesFiles>();
        var recorded = await AddAsync(studio, Header + "2026-10-20,Web shop,1001,,Fig,100 mL,,1,22.00,20,\n");
        (await files.PostAsync(studio.Ana, new PostSalesFile { FileId = recorded.FileId })).Expect();
        var left = await AddAsync(studio, Header + "2026-10-20,Web shop,1002,,Fig,100 mL,,2,22.00,20,\n");
        studio.Clock.Advance(SalesFiles.KeptUnposted);
        var third = await AddAsync(studio, Header + "2026-10-20,Web shop,1003,,Fig,100 mL,,3,22.00,20,\n");
        Assert.NotNull(await files.PreviewAsync(left.FileId));

        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await AddAsync(studio, Header + "2026-10-20,Web shop,1004,,Fig,100 mL,,4,22.00,20,\n");

        Assert.Null(await files.PreviewAsync(left.FileId));
        Assert.IsType<NotFound>((await files.PostAsync(studio.Ana, new PostSalesFile { FileId = left.FileId })).Refusal);
        Assert.NotNull(await files.PreviewAsync(third.FileId));
        await using var db = studio.Db();
        Assert.Equal(3, await db.SalesFiles.CountAsync());
        Assert.False(await db.SalesFileParts.AnyAsync(p => p.FileId == left.FileId));
    }

    [Fact]
    public async Task Post_OneLineBad_RecordsNothingAndSaysWhichLineAndWhy()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var file = await AddAsync(studio, Header
            + "2026-10-20,Web shop,1001,,Fig,,,40,22.00,20,\n2026-10-20,Web shop,1002,,Fig,,,7,22.00,20,\n10/11/2026,Web shop,1003,,Fig,,,1,22.00,20,\n"
            + "2026-10-20,Web shop,1004,,Plum,,,1,22.00,20,\n2026-10-20,Web shop,1005,,Fig,,,1.5,22.00,20,\n2026-12-24,Web shop,1006,,Fig,,,1,22.00,20,\n2026-10-20,Web shop,1007,,Fig,,,1,,20,\n");
        var files = studio.Get<SalesFiles>();

        var rejected = (await files.PreviewAsync(file.FileId, rejectedOnly: true))!;
        Assert.Equal([3L, 4, 5, 6, 7, 8], rejected.Rows.Select(r => r.Line));
        Assert.Equal(
            [
                "6 of 7 can be sold; earlier lines and other sales took the rest.", "date: “10/11/2026” could be two days. Write it as 2026-11-14.", "“Plum” is not on the studio's shelf.",
                "quantity: “1.5” cannot be taken. Type a whole number here. Nothing is rounded for you.", "24 Dec 2026 is still to come.", "The price is missing.",
            ],
            rejected.Rows.Select(r => r.Rejected));

        var refused = Assert.IsType<LinesRejected>((await files.PostAsync(studio.Ana, new PostSalesFile { FileId = file.FileId })).Refusal);

        Assert.Equal((6, 7, 3L), (refused.Rejected, refused.Lines, refused.FirstLine));
        Assert.Equal(46, await studio.UnitsAsync(batch));
        Assert.Empty(await studio.Get<Sales>().ListAsync());
    }

    [Fact]
    public async Task WriteRejected_FieldsThatASpreadsheetWouldRun_AreMadeText()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.FilledBatchAsync();
        var file = await AddAsync(studio, Header + "2026-10-20,Web shop,=1+1,@SUM(A1),Plum,,,1,22.00,20,\n");
        using var written = new MemoryStream();

        await studio.Get<SalesFiles>().WriteRejectedAsync(file.FileId, written);

        var lines = Encoding.UTF8.GetString(written.ToArray()).ReplaceLineEndings("\n").Split('\n');
        Assert.Equal("line,channel,order,customer,reason", lines[0]);
        Assert.StartsWith("2,Web shop,\"'=1+1\",\"'@SUM(A1)\",", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Add_ColumnsMissingOrPostedBefore_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.FilledBatchAsync();
        var files = studio.Get<SalesFiles>();
        using var wrong = new MemoryStream(Encoding.UTF8.GetBytes("when;what\n2026-10-20;Fig\n"));
        var missing = Assert.IsType<ColumnsMissing>((await files.AddAsync(studio.Ana, new AddSalesFile { Name = "x" }, wrong)).Refusal);
        Assert.Equal(["date", "quantity", "price", "product or batch"], missing.Names);

        const string Text = "date;product;quantity;price\n2026-10-20;Fig;1;22,50\n";
        var file = await AddAsync(studio, Text);
        (await files.PostAsync(studio.Ana, new PostSalesFile { FileId = file.FileId })).Expect();
        using var again = new MemoryStream(Encoding.UTF8.GetBytes(Text));
        Assert.IsType<Because>((await files.AddAsync(studio.Ana, new AddSalesFile { Name = "again" }, again)).Refusal);
        Assert.Equal(22.50m, Assert.Single((await studio.Get<Sales>().ListAsync())).Net);
    }

    [Fact]
    public async Task Post_HundredThousandLines_StaysUnderTheMemoryBound()
    {
        const int Lines = 100_000;
        await using var studio = await TestStudio.NewAsync();
        var like = await studio.FilledBatchAsync();
        var batch = await studio.AlsoFilledAsync("RS-9", like, Lines + 10, new DateOnly(2027, 3, 1));
        var path = Path.GetTempFileName();
        try
        {
            await using (var writer = new StreamWriter(path))
            {
                await writer.WriteAsync(Header);
                for (var n = 0; n < Lines; n++)
                {
                    await writer.WriteAsync(FormattableString.Invariant($"2026-10-20,Web shop,{n},Buyer {n % 500},Fig,100 mL,,1,22.00,20,0.94\n"));
                }
            }

            await using var content = File.OpenRead(path);
            var before = GC.GetTotalMemory(forceFullCollection: true);
            using var done = new CancellationTokenSource();
            var peak = PeakAsync(done.Token);
            var files = studio.Get<SalesFiles>();
            var file = (await files.AddAsync(studio.Ana, new AddSalesFile { Name = "year.csv" }, content)).Expect();
            var preview = (await files.PreviewAsync(file.FileId, skip: Lines - 10))!;
            var posted = (await files.PostAsync(studio.Ana, new PostSalesFile { FileId = file.FileId })).Expect();
            await done.CancelAsync();
            var live = await peak - before;

            output.WriteLine($"{content.Length / Mebibyte} MiB of file, {live / (double)Mebibyte:0.0} MiB live at most");
            Assert.Equal((Lines, 0, 10), (preview.Lines, preview.Rejected, preview.Rows.Count));
            Assert.Equal(Lines, posted.Sales);
            Assert.Equal(10, await studio.UnitsAsync(batch));
            Assert.InRange(live, 0, MostLive);
            await using var db = studio.Db();
            Assert.Equal(500, await db.Customers.CountAsync());
        }
        finally
        {
            File.Delete(path);
        }
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
