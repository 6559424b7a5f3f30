using MakerStudio.Services.Schema;
using MakerStudio.Tests.Shared;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Npgsql;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>
/// The real app on a port of its own, over a database cloned from a migrated one. Only the clock is the test's, and with
/// it the last day of the sign-in cookie.
/// </summary>
public sealed class StudioApp : WebApplicationFactory<Program>
{
    private static readonly Lazy<Task<string>> Template = new(MakeTemplateAsync);

    private readonly PostgresForTests _postgres;
    private readonly string _database;

    private StudioApp(PostgresForTests postgres, string database, DateTimeOffset now)
    {
        (_postgres, _database) = (postgres, database);
        Clock = new StudioClock(now);
        UseKestrel(port: 0);
    }

    public StudioClock Clock { get; }

    /// <summary>http://localhost with its port: passkeys work there, and not at 127.0.0.1.</summary>
    public Uri Address { get; private set; } = null!;

    public string AppConnectionString => _postgres.ConnectionString(_database, PostgresForTests.AppRole);

    public static async Task<StudioApp> StartAsync(DateTimeOffset now)
    {
        var postgres = await PostgresForTests.GetAsync();
        var database = $"studio_{Guid.NewGuid():n}";
        await postgres.CreateDatabaseAsync(database, await Template.Value);
        var app = new StudioApp(postgres, database, now);
        app.StartServer();
        var bound = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        app.Address = new Uri($"http://localhost:{new Uri(bound).Port}/");
        return app;
    }

    public T Get<T>()
        where T : notnull => Services.GetRequiredService<T>();

    /// <inheritdoc cref="IStudio.ValueAsync"/>
    public Task<T> ValueAsync<T>(string sql, params object[] values) => Rows.ValueAsync<T>(AppConnectionString, sql, values);

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment(Environments.Production);
        builder.UseStaticWebAssets();
        builder.UseSetting("urls", "http://127.0.0.1:0");
        builder.UseSetting("ConnectionStrings:Studio", AppConnectionString);
        builder.UseSetting("ConnectionStrings:StudioOwner", _postgres.ConnectionString(_database, PostgresForTests.OwnerRole));
        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton<TimeProvider>(Clock);
            services.PostConfigure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, cookie => cookie.CookieManager = new SessionCookies());
        });
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await _postgres.DropDatabaseAsync(_database);
        GC.SuppressFinalize(this);
    }

    private static async Task<string> MakeTemplateAsync()
    {
        var postgres = await PostgresForTests.GetAsync();
        var name = $"studio_template_{Guid.NewGuid():n}";
        await StudioSchema.MigrateAsync(await postgres.CreateDatabaseAsync(name), PostgresForTests.AppRole);
        NpgsqlConnection.ClearAllPools();
        return name;
    }
}
