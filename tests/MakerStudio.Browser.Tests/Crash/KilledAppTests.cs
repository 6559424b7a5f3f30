using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.Host;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Crash;

/// <summary>Scenario S7: the app is killed in the middle of weighings. Each is in or out, and sent again it counts once.</summary>
public sealed partial class KilledAppTests
{
    private const int Readings = 40;
    private const int KillAfter = 12;

    [Fact]
    public async Task Weighings_AppKilledMidStream_EachIsInOrOutAndSentAgainCountsOnce()
    {
        await using var studio = new StudioProcess();
        var link = await studio.StartAsync();
        Assert.NotNull(link);
        await using var ana = await Visitor.ComeAsync("Ana", Device.Desk, studio.Address);
        await ana.GoAsync(link);
        await ana.Page.SetUpAsync("Quince Yard Studio", "Ana", "An", StudioHost.Passphrase);
        await Expect(ana.Page.Heading("The studio is yours, Ana")).ToBeVisibleAsync();
        await ana.GoAsync(link);
        await Expect(ana.Page.Heading("No way in here")).ToBeVisibleAsync();

        var (batch, code) = await StartBatchAsync(studio);
        var line = await studio.ValueAsync<Guid>("select id from batch_lines where batch_id = $1 and position = 1", batch);
        var lot = await studio.ValueAsync<Guid>("select id from lots where code = 'P-1'");
        var readings = Enumerable.Range(0, Readings).Select(_ => new { requestId = Guid.CreateVersion7(), batchId = batch, lineId = line, lotId = lot, text = "1.0", asTyped = true }).ToList();

        var confirmed = new List<Guid>();
        using (var bench = await BenchAsync(ana, studio, code))
        {
            for (var i = 0; i < Readings; i++)
            {
                var sending = SendAsync(bench, readings[i]);
                if (i == KillAfter)
                {
                    await studio.KillAsync();
                }

                if (await sending)
                {
                    confirmed.Add(readings[i].requestId);
                }
            }
        }

        Assert.InRange(confirmed.Count, KillAfter, Readings - 1);
        Assert.Null(await studio.StartAsync());
        var stored = await studio.ValueAsync<string[]>("select array_agg(request_id::text) from weighings");
        Assert.Subset(stored.ToHashSet(), confirmed.Select(c => c.ToString()).ToHashSet());
        await BooksAgreeAsync(studio, stored.Length);

        using (var bench = await BenchAsync(ana, studio, code))
        {
            foreach (var reading in readings)
            {
                Assert.True(await SendAsync(bench, reading));
            }
        }

        Assert.Equal(Readings, await studio.ValueAsync<int>("select count(*) from weighings"));
        await BooksAgreeAsync(studio, Readings);
    }

    private static async Task<(Guid Id, string Code)> StartBatchAsync(StudioProcess studio)
    {
        await studio.KnowAnaAsync();
        var yard = new QuinceYard(studio);
        await yard.AddMaterialsAsync();
        await yard.FillShelvesAsync();
        await yard.ReleaseFigAsync();
        return await yard.StartBatchAsync(studio.Ana, 4_000m);
    }

    private static async Task BooksAgreeAsync(StudioProcess studio, int weighings)
    {
        Assert.Equal(5_000_000 - (weighings * 1_000L), await studio.ValueAsync<long>("select b.on_hand from lot_balances b join lots l on l.id = b.lot_id where l.code = 'P-1'"));
        Assert.Equal(weighings, await studio.ValueAsync<int>("select count(*) from movements where weighing_id is not null"));
        var (exitCode, said) = await studio.VerifyAsync();
        Assert.True(exitCode == 0, said);
    }

    /// <summary>The sheet's own way of sending: the cookies of Ana's browser and the token on the sheet.</summary>
    private static async Task<HttpClient> BenchAsync(Visitor ana, StudioProcess studio, string code)
    {
        var cookies = new CookieContainer();
        foreach (var cookie in await ana.Context.CookiesAsync())
        {
            cookies.Add(new System.Net.Cookie(cookie.Name, cookie.Value, "/", studio.Address.Host));
        }

        var client = new HttpClient(new SocketsHttpHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = studio.Address };
        var sheet = await client.GetStringAsync(new Uri($"bench/{code}/weigh", UriKind.Relative));
        client.DefaultRequestHeaders.Add("RequestVerificationToken", SheetToken().Match(sheet).Groups[1].Value);
        return client;
    }

    /// <returns>True when the studio said that it is recorded; false when the line broke.</returns>
    private static async Task<bool> SendAsync(HttpClient bench, object reading)
    {
        try
        {
            using var answer = await bench.PostAsJsonAsync(new Uri("bench/readings", UriKind.Relative), reading);
            var said = await answer.Content.ReadFromJsonAsync<JsonElement>();
            Assert.Equal("recorded", said.GetProperty("kind").GetString());
            return true;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    [GeneratedRegex("data-token=\"([^\"]+)\"")]
    private static partial Regex SheetToken();
}
