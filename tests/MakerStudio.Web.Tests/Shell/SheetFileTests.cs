using System.Net;
using System.Net.Http.Headers;
using System.Security.Claims;
using System.Text.Encodings.Web;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Hosting;
using MakerStudio.Web.Shell.Sheets;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace MakerStudio.Web.Tests.Shell;

/// <summary>Tables as files over real HTTP on a loopback port, on a real database.</summary>
public sealed class SheetFileTests : IAsyncLifetime
{
    private readonly HttpClient _http = new(new HttpClientHandler { AllowAutoRedirect = false });
    private TestStudio _studio = default!;
    private WebApplication _app = default!;

    public async Task InitializeAsync()
    {
        _studio = await TestStudio.NewAsync();
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton<TimeProvider>(_studio.Clock);
        builder.Services.AddSingleton(_studio.Get<StudioSettings>()).AddSingleton(_studio.Get<Stock>()).AddSingleton(_studio.Get<MaterialPrices>()).AddSingleton(_studio.Get<Materials>())
            .AddSingleton(_studio.Get<Lots>()).AddSingleton(_studio.Get<Deliveries>()).AddSingleton(_studio.Get<Formulas>()).AddSingleton(_studio.Get<Batches>())
            .AddSingleton(_studio.Get<CureShelf>()).AddSingleton(_studio.Get<BatchRecords>()).AddSingleton(_studio.Get<WhoDidWhat>());
        builder.Services.AddAuthentication("test").AddScheme<AuthenticationSchemeOptions, HeaderSignIn>("test", null);
        builder.Services.AddAuthorization();
        _app = builder.Build();
        _app.UseStudioFront();
        _app.UseAuthentication();
        _app.UseAuthorization();
        _app.MapStudioSheets();
        await _app.StartAsync();
        _http.BaseAddress = new Uri(_app.Urls.Single());
        _http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("test", "Ana");
    }

    public async Task DisposeAsync()
    {
        _http.Dispose();
        await _app.DisposeAsync();
        await _studio.DisposeAsync();
    }

    [Theory]
    [InlineData("/storeroom/materials")]
    [InlineData("/storeroom/lots")]
    [InlineData("/storeroom/lots/P-1/movements")]
    [InlineData("/storeroom/deliveries")]
    [InlineData("/storeroom/cover")]
    [InlineData("/storeroom/deliveries/D-1/lines")]
    [InlineData("/library/formulas")]
    [InlineData("/library/lines")]
    [InlineData("/bench/batches")]
    [InlineData("/curing/shelf")]
    [InlineData("/finished/batches")]
    [InlineData("/studio/acts")]
    public async Task Table_SignedIn_ComesAsBothFilesAndNotWithoutASignIn(string path)
    {
        await DeliveryAsync();

        using var csv = await _http.GetAsync(path + ".csv");
        using var xlsx = await _http.GetAsync(path + ".xlsx");
        _http.DefaultRequestHeaders.Authorization = null;
        using var stranger = await _http.GetAsync(path + ".csv");

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Unauthorized), (csv.StatusCode, xlsx.StatusCode, stranger.StatusCode));
        Assert.Equal("attachment", csv.Content.Headers.ContentDisposition!.DispositionType);
        Assert.EndsWith(" 2026-10-26.csv", csv.Content.Headers.ContentDisposition.FileNameStar, StringComparison.Ordinal);
        Assert.Equal("text/csv", csv.Content.Headers.ContentType!.MediaType);
        Assert.Equal("PK"u8.ToArray(), (await xlsx.Content.ReadAsByteArrayAsync())[..2]);
    }

    /// <summary>Own example: 5 kg for 310.00 is 62.00 a kg and 5,000 g.</summary>
    [Fact]
    public async Task Lots_AfterADelivery_SayAmountCostAndUnits()
    {
        await DeliveryAsync();

        var lines = (await _http.GetStringAsync("/storeroom/lots.csv")).Split("\r\n");

        var cells = lines[0].TrimStart('\uFEFF').Split(',').Zip(lines[1].Split(',')).ToDictionary(c => c.First, c => c.Second);
        Assert.Equal(("P-1", "Fig fragrance oil"), (cells["Lot"], cells["Material"]));
        Assert.Equal(("5000", "g", "62"), (cells["On hand (g or each)"], cells["Stocked in"], cells["Landed (EUR per kg or each)"]));
        Assert.Equal("2026-09-24", cells["Received"]);
    }

    /// <summary>Own example: 25 L at 0.79 g/mL are 19,750 g; 132.00 and 6.00 freight over them is 6.9873… a kg.</summary>
    [Fact]
    public async Task Prices_PaidAndAsked_SayLandedCostInOneUnit()
    {
        await DeliveryAsync();
        var oil = await _studio.MaterialOfLotAsync("P-1");
        var materials = _studio.Get<Materials>();
        var form = (await materials.FormAsync(oil))!;
        (form.Density, form.DensityAtCelsius) = (0.79m, 20m);
        form.Suppliers.Add(new SupplierLine { Name = "Alder Supply" });
        (await materials.ChangeAsync(_studio.Ana, form)).Expect();
        (await _studio.Get<MaterialPrices>().KeepBreakAsync(_studio.Ana, new KeepPriceBreak
        {
            MaterialId = oil, SupplierId = (await _studio.Get<Suppliers>().ListAsync()).Single().Id, Quantity = 25, Unit = AmountUnit.Litre, Price = 132m, Freight = 6m, Note = "=1+1",
        })).Expect();

        var paid = await _http.GetStringAsync($"/storeroom/materials/{oil}/prices.csv");
        var asked = await _http.GetStringAsync($"/storeroom/materials/{oil}/prices/asked.csv?use=100&life=100");

        Assert.Contains("Fig fragrance oil,2026-09-24,Alder Supply,D-1,P-1,,5,kg,5000,310,0,0,0,310,62,", paid, StringComparison.Ordinal);
        Assert.Contains("Fig fragrance oil,Alder Supply,25,L,19750,132,6,,138,6.987341772152,0,0,", asked, StringComparison.Ordinal);
        Assert.Contains("outlasts its life,2026-10-26,Ana,", asked, StringComparison.Ordinal);
        Assert.Contains("'=1+1", asked, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await _http.GetAsync($"/storeroom/materials/{Guid.CreateVersion7()}/prices.csv")).StatusCode);
    }

    [Fact]
    public async Task Lines_OfAReleasedVersion_GiveItsShares()
    {
        var fig = await _studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var ethanol = await _studio.MaterialAsync("Ethanol", MaterialKind.Solvent);
        await _studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (fig, 12m), (ethanol, 88m));
        var id = (await _studio.Get<Formulas>().ListAsync(LibraryShelf.InUse)).Rows.Single().FormulaId;

        var text = await _http.GetStringAsync($"/library/{id}/v/1/lines.csv");

        Assert.Contains("1,Fig fragrance oil,12,% by weight,12,", text, StringComparison.Ordinal);
        Assert.Contains("2,Ethanol,88,% by weight,88,", text, StringComparison.Ordinal);
    }

    /// <summary>More lines than one page of the record holds.</summary>
    [Fact]
    public async Task Acts_MoreThanAPage_AllComeNewestFirst()
    {
        for (var i = 0; i < WhoDidWhat.PageLength + 5; i++)
        {
            (await _studio.Get<Suppliers>().AddAsync(_studio.Ana, new AddSupplier { Name = $"Supplier {i}" })).Expect();
        }

        var lines = (await _http.GetStringAsync("/studio/acts.csv")).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(1 + WhoDidWhat.PageLength + 5, lines.Length);
        Assert.Contains("Added the supplier Supplier 54", lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/storeroom/lots/P-9/movements.csv")]
    [InlineData("/storeroom/deliveries/D-9/lines.xlsx")]
    [InlineData("/library/0193a6a0-0000-7000-8000-000000000000/v/1/lines.csv")]
    public async Task Table_OfSomethingThatIsNotHere_IsNotFound(string address)
    {
        using var answer = await _http.GetAsync(address);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private async Task DeliveryAsync()
    {
        var fig = await _studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var supplier = (await _studio.Get<Suppliers>().AddAsync(_studio.Ana, new AddSupplier { Name = "Alder Supply" })).Expect();
        (await _studio.Get<Deliveries>().PostAsync(_studio.Ana, new PostDelivery
        {
            SupplierId = supplier.Id, ReceivedOn = new DateOnly(2026, 9, 24),
            Lines = [new DeliveryLineTyped { MaterialId = fig, Quantity = 5, Unit = AmountUnit.Kilogram, Price = 310m }],
        })).Expect();
    }

    /// <summary>Stands for the cookie.</summary>
    private sealed class HeaderSignIn(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logs, UrlEncoder encoder)
        : AuthenticationHandler<AuthenticationSchemeOptions>(options, logs, encoder)
    {
        protected override Task<AuthenticateResult> HandleAuthenticateAsync() => Task.FromResult(
            Request.Headers.Authorization.Count == 0
                ? AuthenticateResult.NoResult()
                : AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(new ClaimsIdentity([], "test")), "test")));
    }
}
