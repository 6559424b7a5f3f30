using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Claims;
using System.Text.Encodings.Web;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Hosting;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Tests.Storeroom;

/// <summary>The upload and the download over real HTTP on a loopback port.</summary>
public sealed class PaperEndpointTests : IAsyncLifetime
{
    private static readonly byte[] Pdf = "%PDF-1.7\n1 0 obj"u8.ToArray();
    private readonly HttpClient _http = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() });
    private TestStudio _studio = default!;
    private WebApplication _app = default!;
    private Guid _material;
    private string _token = "";

    public async Task InitializeAsync()
    {
        _studio = await TestStudio.NewAsync();
        _material = await _studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(_studio.Get<Papers>());
        builder.Services.AddAntiforgery();
        builder.Services.AddAuthentication("test").AddScheme<AuthenticationSchemeOptions, HeaderSignIn>("test", null);
        builder.Services.AddAuthorization();
        _app = builder.Build();
        _app.UseStudioFront();
        _app.UseAuthentication();
        _app.UseAuthorization();
        _app.MapPapers();
        _app.MapGet("/token", (HttpContext context, IAntiforgery antiforgery) => antiforgery.GetAndStoreTokens(context).RequestToken);
        await _app.StartAsync();
        _http.BaseAddress = new Uri(_app.Urls.Single());
        SignIn(_studio.Ana.PersonId, _studio.Ana.Stamp);
        _token = await _http.GetStringAsync("/token");
    }

    public async Task DisposeAsync()
    {
        _http.Dispose();
        await _app.DisposeAsync();
        await _studio.DisposeAsync();
    }

    [Fact]
    public async Task Post_ThenGet_GivesTheSameBytesAsAnAttachmentThatCannotRun()
    {
        var posted = await PostAsync(Pdf, "../../Öl\r\n sheet.pdf");
        Assert.Equal(HttpStatusCode.OK, posted.StatusCode);
        Assert.True((await posted.Content.ReadFromJsonAsync<PaperAnswer>())!.Done);
        var row = Assert.Single(await _studio.Get<Papers>().ListAsync(_material));
        Assert.Equal(("rev. 4", new DateOnly(2026, 9, 24)), (row.Edition, row.EditionDate));

        var file = await _http.GetAsync($"/papers/{row.Id}");

        Assert.Equal(Pdf, await file.Content.ReadAsByteArrayAsync());
        Assert.Equal("application/pdf", file.Content.Headers.ContentType!.MediaType);
        Assert.Equal("attachment", file.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal(row.FileName, file.Content.Headers.ContentDisposition.FileNameStar);
        Assert.Equal("nosniff", file.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.StartsWith("default-src 'none'; sandbox", file.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_SameRequestTwice_StoresOne()
    {
        var id = Guid.CreateVersion7();
        Assert.Equal(HttpStatusCode.OK, (await PostAsync(Pdf, "sds.pdf", id)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PostAsync(Pdf, "sds.pdf", id)).StatusCode);
        Assert.Single(await _studio.Get<Papers>().ListAsync(_material));
    }

    [Fact]
    public async Task Post_DrawingWithScript_IsRefusedInWords() =>
        await RefusedAsync(await PostAsync("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"u8.ToArray(), "sds.pdf"), HttpStatusCode.OK, "PDF, PNG, JPEG or plain text");

    [Fact]
    public async Task Post_JustOverTenMegabytes_IsRefusedInWords()
    {
        var large = new byte[AddPaper.MostBytes + 1];
        Pdf.CopyTo(large, 0);
        await RefusedAsync(await PostAsync(large, "sds.pdf"), HttpStatusCode.OK, "at most 10 MB");
    }

    [Fact]
    public async Task Post_WithoutToken_IsRefused()
    {
        _token = "";
        await RefusedAsync(await PostAsync(Pdf, "sds.pdf"), HttpStatusCode.BadRequest, "no longer good");
    }

    [Fact]
    public async Task Post_NotSignedIn_IsTurnedAway()
    {
        _http.DefaultRequestHeaders.Authorization = null;
        Assert.Equal(HttpStatusCode.Unauthorized, (await PostAsync(Pdf, "sds.pdf")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await _http.GetAsync($"/papers/{Guid.NewGuid()}")).StatusCode);
        Assert.Empty(await _studio.Get<Papers>().ListAsync(_material));
    }

    [Fact]
    public async Task Post_SignedOutEverywhereMeanwhile_HasNoPower()
    {
        SignIn(_studio.Ana.PersonId, "an older stamp");
        await RefusedAsync(await PostAsync(Pdf, "sds.pdf"), HttpStatusCode.OK, "signed out");
    }

    [Fact]
    public async Task Post_WithoutAFile_IsRefusedInWords()
    {
        using var form = Form(Guid.CreateVersion7());
        await RefusedAsync(await _http.PostAsync("/papers", form), HttpStatusCode.BadRequest, "without a file");
    }

    [Fact]
    public async Task Get_UnknownPaper_IsNotFound() =>
        Assert.Equal(HttpStatusCode.NotFound, (await _http.GetAsync($"/papers/{Guid.NewGuid()}")).StatusCode);

    private async Task RefusedAsync(HttpResponseMessage answer, HttpStatusCode status, string says)
    {
        Assert.Equal(status, answer.StatusCode);
        var said = (await answer.Content.ReadFromJsonAsync<PaperAnswer>())!;
        Assert.False(said.Done);
        Assert.Contains(says, said.Happened, StringComparison.Ordinal);
        Assert.Empty(await _studio.Get<Papers>().ListAsync(_material));
    }

    private async Task<HttpResponseMessage> PostAsync(byte[] content, string name, Guid? request = null)
    {
        using var form = Form(request ?? Guid.CreateVersion7());
        var file = new ByteArrayContent(content);
        file.Headers.ContentDisposition = new ContentDispositionHeaderValue("form-data") { Name = "file", FileNameStar = name };
        form.Add(file);
        return await _http.PostAsync("/papers", form);
    }

    private MultipartFormDataContent Form(Guid request) => new()
    {
        { new StringContent(request.ToString()), "requestId" }, { new StringContent(_material.ToString()), "materialId" },
        { new StringContent("Sds"), "kind" }, { new StringContent(""), "lotId" }, { new StringContent("rev. 4"), "edition" },
        { new StringContent("2026-09-24"), "editionDate" }, { new StringContent(_token), "__RequestVerificationToken" },
    };

    private void SignIn(Guid person, string stamp) =>
        _http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("test", $"{person}|{stamp}");

    /// <summary>Stands for the cookie: "person|stamp" in a header.</summary>
    private sealed class HeaderSignIn(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logs, UrlEncoder encoder)
        : AuthenticationHandler<AuthenticationSchemeOptions>(options, logs, encoder)
    {
        protected override Task<AuthenticateResult> HandleAuthenticateAsync()
        {
            if (!AuthenticationHeaderValue.TryParse(Request.Headers.Authorization, out var header) || header.Parameter?.Split('|') is not [var person, var stamp])
            {
                return Task.FromResult(AuthenticateResult.NoResult());
            }

            var names = new IdentityOptions().ClaimsIdentity;
            var identity = new ClaimsIdentity([new(names.UserIdClaimType, person), new(names.SecurityStampClaimType, stamp)], "test");
            return Task.FromResult(AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), "test")));
        }
    }
}
