using System.Net;
using System.Net.Http.Headers;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.Host;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Refusals;

/// <summary>What is sent to the door by somebody who has no business there.</summary>
public sealed class DoorTests(StudioHost host) : IClassFixture<StudioHost>
{
    private const string Elsewhere = "https://elsewhere.example";

    [Theory]
    [InlineData("GET", "/_blazor")]
    [InlineData("POST", "/_blazor/negotiate?negotiateVersion=1")]
    [InlineData("POST", "/account/sign-out")]
    [InlineData("POST", "/sign-in")]
    public async Task ForeignOrigin_Anything_IsForbidden(string method, string path)
    {
        using var client = await ClientAsync("Ana");
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        request.Headers.Add("Origin", Elsewhere);
        using var answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);

        using var own = new HttpRequestMessage(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1");
        own.Headers.Add("Origin", host.Address.GetLeftPart(UriPartial.Authority));
        using var ownAnswer = await client.SendAsync(own);
        Assert.Equal(HttpStatusCode.OK, ownAnswer.StatusCode);
    }

    /// <summary>Attack inputs: open redirect by a second slash, a backslash, a tab, a whole address.</summary>
    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("javascript:alert(1)")]
    public Task SignIn_ReturnPathLeadsElsewhere_GoesToToday(string returnPath) => Scene.PlayAsync(host, async scene =>
    {
        var bo = await scene.StrangerAsync(Device.Phone, "Bo");
        await bo.GoAsync($"/sign-in?returnUrl={Uri.EscapeDataString(returnPath)}");
        await bo.Page.SignInAsync("Bo", StudioHost.Passphrase);
        Assert.Equal(host.Address.ToString(), bo.Page.Url);
    });

    [Fact]
    public Task SignIn_ReturnPathWithin_GoesThere() => Scene.PlayAsync(host, async scene =>
    {
        var bo = await scene.StrangerAsync(Device.Phone, "Bo");
        await bo.GoAsync("/storeroom/materials/new?from=here");
        await bo.Page.FillSignInAsync("Bo", StudioHost.Passphrase);
        await Expect(bo.Page.Heading("New material")).ToBeVisibleAsync();
        Assert.EndsWith("/storeroom/materials/new?from=here", bo.Page.Url, StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("/sign-in", "_handler=sign-in&Form.Name=Ana&Form.Passphrase=lantern+quarry+seven+tides")]
    [InlineData("/account/sign-out", "")]
    [InlineData("/account/passkey/request-options", "")]
    [InlineData("/account/passkey/creation-options", "")]
    [InlineData("/first-run", "_handler=first-run&Form.PersonName=Eve")]
    public async Task Post_WithoutAntiforgeryToken_IsRefusedAndSetsNoSignIn(string path, string form)
    {
        using var client = await ClientAsync(path == "/sign-in" ? null : "Ana");
        using var content = new StringContent(form, new MediaTypeHeaderValue("application/x-www-form-urlencoded"));
        using var answer = await client.PostAsync(new Uri(path, UriKind.Relative), content);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        if (path == "/sign-in")
        {
            Assert.DoesNotContain(answer.Headers.Where(h => h.Key == "Set-Cookie").SelectMany(h => h.Value), c => c.StartsWith("studio-sign-in", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/storeroom/materials/new")]
    [InlineData("/no-such-page")]
    [InlineData("/studio")]
    public async Task Page_NotSignedIn_LeadsToSignIn(string path)
    {
        using var client = await ClientAsync(null);
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in?", answer.Headers.Location!.PathAndQuery(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Headers_ForgedHostAndProxy_AreNotBelieved()
    {
        using var client = await ClientAsync(null);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/sign-in?returnUrl=%2F");
        request.Headers.Add("X-Forwarded-Host", "elsewhere.example");
        request.Headers.Add("X-Forwarded-Proto", "https");
        using var answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.DoesNotContain("elsewhere.example", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("secure", string.Join(';', answer.Headers.Where(h => h.Key == "Set-Cookie").SelectMany(h => h.Value)), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("script-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public Task SignIn_WrongPassphraseFiveTimes_RestsThenFitsAgain() => Scene.PlayAsync(host, async scene =>
    {
        var bo = await scene.StrangerAsync(Device.Phone, "Bo");
        await bo.GoAsync("/sign-in");
        for (var time = 0; time < 5; time++)
        {
            await bo.Page.FillSignInAsync("Bo", $"not the words of Bo, try {time}");
            await Expect(bo.Page.Refusal()).ToBeVisibleAsync();
        }

        await bo.Page.FillSignInAsync("Bo", StudioHost.Passphrase);
        await Expect(bo.Page.Heading("Who is at the bench?")).ToBeVisibleAsync();
        host.App.Clock.Advance(TimeSpan.FromMinutes(6));
        await bo.GoAsync("/sign-in");
        await bo.Page.SignInAsync("Bo", StudioHost.Passphrase);
    });

    [Fact]
    public Task Names_Unknown_AnswerLikeKnownOnes() => Scene.PlayAsync(host, async scene =>
    {
        var eve = await scene.StrangerAsync(Device.Desk, "Eve");
        var said = new List<string>();
        foreach (var name in new[] { "Ana", "Nobody At All" })
        {
            await eve.GoAsync("/sign-in");
            await eve.Page.FillSignInAsync(name, "words that are not the passphrase");
            said.Add(await eve.Page.Refusal().InnerTextAsync());
        }

        Assert.Equal(said[0], said[1]);
    });

    /// <summary>A client that follows no redirects; signed in as somebody by the cookies of their browser.</summary>
    private async Task<HttpClient> ClientAsync(string? person) => await host.ClientAsync(person);
}

internal static class Locations
{
    /// <summary>Of an absolute or a relative location.</summary>
    public static string PathAndQuery(this Uri location) => location.IsAbsoluteUri ? location.PathAndQuery : location.ToString();
}
