using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Claims;
using System.Text;
using System.Text.Encodings.Web;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished.Selling;
using MakerStudio.Web.Hosting;
using MakerStudio.Web.Shell.Files;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Tests.Exchange;

/// <summary>Files of rows over real HTTP on a loopback port: those that are brought in, and those of sales, which go the same way.</summary>
public sealed class BroughtFileEndpointTests : IAsyncLifetime
{
    private const string Good = "Material,Kind\nDPG,Solvent\n";
    private readonly HttpClient _http = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() });
    private TestStudio _studio = default!;
    private WebApplication _app = default!;
    private string _token = "";

    public async Task InitializeAsync()
    {
        _studio = await TestStudio.NewAsync();
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(_studio.Get<BroughtFiles>()).AddSingleton(_studio.Get<SalesFiles>());
        builder.Services.AddAntiforgery();
        builder.Services.AddAuthentication("test").AddScheme<AuthenticationSchemeOptions, HeaderSignIn>("test", null);
        builder.Services.AddAuthorization();
        _app = builder.Build();
        _app.UseStudioFront();
        _app.UseAuthentication();
        _app.UseAuthorization();
        _app.MapBroughtFiles();
        _app.MapSalesFiles();
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
    public async Task Post_GoodFile_IsKeptOnceHoweverOftenItIsSent()
    {
        var id = Guid.CreateVersion7();
        var first = await SaidAsync(await PostAsync(Encoding.UTF8.GetBytes(Good), request: id));
        var second = await SaidAsync(await PostAsync(Encoding.UTF8.GetBytes(Good), request: id));

        Assert.True(first.Done);
        Assert.Equal(first.FileId, second.FileId);
        Assert.Equal("list.csv", (await _studio.Get<BroughtFiles>().PreviewAsync(first.FileId!.Value))!.Name);
        Assert.Empty(await _studio.Get<Materials>().FormsAsync());
    }

    [Fact]
    public async Task Get_RefusedRowsAndEmptyFile_AreAttachmentsThatNothingKeeps()
    {
        var kept = await SaidAsync(await PostAsync(Encoding.UTF8.GetBytes("Material,Kind,Density (g/mL)\n=cmd(),Solvent,1.023\n")));
        var unread = await _http.GetAsync($"/brought-files/{kept.FileId}/refused.csv");
        var asComma = await _http.GetStringAsync($"/brought-files/{kept.FileId}/refused.csv?mark=%2C");
        var empty = await _http.GetAsync("/brought-files/empty/lots.csv");

        Assert.Contains("'=cmd(),Solvent,1.023,2,", await unread.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains("A density lies between", asComma, StringComparison.Ordinal);
        foreach (var file in new[] { unread, empty })
        {
            Assert.Equal(("attachment", "text/csv"), (file.Content.Headers.ContentDisposition!.DispositionType, file.Content.Headers.ContentType!.MediaType));
            Assert.Equal("nosniff", file.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.True(file.Headers.CacheControl!.NoStore);
        }

        Assert.StartsWith("Material,Amount,Unit,Landed (EUR per kg or each),Received,Lot,", (await empty.Content.ReadAsStringAsync()).TrimStart('\uFEFF'), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await _http.GetAsync("/brought-files/empty/7.csv")).StatusCode);
    }

    [Fact]
    public async Task Post_FileThatCannotBeRead_AnswersInThreeParts()
    {
        var said = await SaidAsync(await PostAsync(Encoding.UTF8.GetBytes("Name\nDPG\n")));

        Assert.Equal((false, "The column “Kind” is not there.", "Nothing was kept; the form stays as it is."), (said.Done, said.Happened, said.Kept));
        Assert.NotEmpty(said.ToDo);
    }

    [Theory]
    [InlineData("/brought-files", 5, "This file is larger than 4 MB.")]
    [InlineData("/sales-files", 65, "This file is larger than 64 MB.")]
    public async Task Post_TooLarge_IsTurnedAwayBeforeItIsRead(string address, int megabytes, string says)
    {
        var answer = await PostAsync(new byte[megabytes * 1024 * 1024], address);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal(says, (await SaidAsync(answer)).Happened);
    }

    [Theory]
    [InlineData("/brought-files")]
    [InlineData("/sales-files")]
    public async Task Post_WithoutTokenFileOrSignIn_TakesNoEffect(string address)
    {
        using var none = Form(Guid.CreateVersion7());
        Assert.Equal("The form came without a file.", (await SaidAsync(await _http.PostAsync(address, none))).Happened);
        SignIn(_studio.Ana.PersonId, "an older stamp");
        Assert.Contains("signed out", (await SaidAsync(await PostAsync(Encoding.UTF8.GetBytes(Good), address))).Happened, StringComparison.Ordinal);
        _token = "";
        Assert.Equal(HttpStatusCode.BadRequest, (await PostAsync(Encoding.UTF8.GetBytes(Good), address)).StatusCode);
        _http.DefaultRequestHeaders.Authorization = null;
        Assert.Equal(HttpStatusCode.Unauthorized, (await PostAsync(Encoding.UTF8.GetBytes(Good), address)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await _http.GetAsync("/brought-files/empty/lots.csv")).StatusCode);
    }

    private static async Task<FileAnswer> SaidAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync<FileAnswer>())!;

    private async Task<HttpResponseMessage> PostAsync(byte[] content, string address = "/brought-files", Guid? request = null)
    {
        using var form = Form(request ?? Guid.CreateVersion7());
        form.Add(new ByteArrayContent(content), "file", "list.csv");
        using var post = new HttpRequestMessage(HttpMethod.Post, address) { Content = form };
        post.Headers.ExpectContinue = true; // a file that is turned away unread is not sent
        return await _http.SendAsync(post);
    }

    private MultipartFormDataContent Form(Guid request) => new()
    {
        { new StringContent(request.ToString()), "requestId" }, { new StringContent("Materials"), "kind" }, { new StringContent(_token), "__RequestVerificationToken" },
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
