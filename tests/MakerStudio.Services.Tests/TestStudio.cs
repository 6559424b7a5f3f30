using MakerStudio.Services.Accounts;
using MakerStudio.Services.Schema;
using MakerStudio.Tests.Shared;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Time.Testing;
using Npgsql;

namespace MakerStudio.Services.Tests;

/// <summary>
/// A studio of its own for one test: a database cloned from the migrated template, two people, one scale,
/// and a clock that only the test moves. It works as the restricted role, like the real app.
/// </summary>
public sealed class TestStudio : IAsyncDisposable
{
    /// <summary>Mon 26 Oct 2026, 10:00 in Berlin.</summary>
    public static readonly DateTimeOffset Monday = new(2026, 10, 26, 9, 0, 0, TimeSpan.Zero);

    private static readonly Lazy<Task<string>> Template = new(MakeTemplateAsync);
    private static readonly Guid AnaId = Guid.CreateVersion7();
    private static readonly Guid BoId = Guid.CreateVersion7();
    private readonly ServiceProvider _services;
    private readonly PostgresForTests _postgres;

    private TestStudio(PostgresForTests postgres, string database, DateTimeOffset now)
    {
        _postgres = postgres;
        Database = database;
        Clock = new FakeTimeProvider(now);
        OwnerConnectionString = postgres.ConnectionString(database, PostgresForTests.OwnerRole);
        AppConnectionString = postgres.ConnectionString(database, PostgresForTests.AppRole);
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton<TimeProvider>(Clock);
        services.AddStudioServices(AppConnectionString);
        _services = services.BuildServiceProvider();
    }

    public string Database { get; }
    public string OwnerConnectionString { get; }
    public string AppConnectionString { get; }
    public FakeTimeProvider Clock { get; }

    /// <summary>An owner.</summary>
    public Actor Ana { get; } = new(AnaId, "stamp of Ana");

    /// <summary>A maker.</summary>
    public Actor Bo { get; } = new(BoId, "stamp of Bo");

    /// <summary>The scale of the bench: 5 kg, readable to 0.1 g.</summary>
    public static Guid ScaleId { get; } = Guid.CreateVersion7();

    public static async Task<TestStudio> NewAsync(DateTimeOffset? now = null)
    {
        var postgres = await PostgresForTests.GetAsync();
        var template = await Template.Value;
        var name = $"studio_{Guid.NewGuid():n}";
        await postgres.CreateDatabaseAsync(name, template);
        return new TestStudio(postgres, name, now ?? Monday);
    }

    public T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();

    /// <summary>Starts what the host would start: hears the news.</summary>
    public async Task StartNewsAsync()
    {
        foreach (var hosted in _services.GetServices<IHostedService>())
        {
            await hosted.StartAsync(CancellationToken.None);
        }
    }

    /// <summary>A context as the restricted role, for looking at rows.</summary>
    internal StudioDb Db() => new(StudioDbOptions.For(AppConnectionString));

    public async ValueTask DisposeAsync()
    {
        foreach (var hosted in _services.GetServices<IHostedService>())
        {
            await hosted.StopAsync(CancellationToken.None);
        }

        await _services.DisposeAsync();
        await _postgres.DropDatabaseAsync(Database);
    }

    private static async Task<string> MakeTemplateAsync()
    {
        var postgres = await PostgresForTests.GetAsync();
        var name = $"studio_template_{Guid.NewGuid():n}";
        var owner = await postgres.CreateDatabaseAsync(name);
        await StudioSchema.MigrateAsync(owner, PostgresForTests.AppRole);
        await using (var db = new StudioDb(StudioDbOptions.For(owner)))
        {
            db.Studio.Add(new MakerStudio.Services.Schema.Studio { Name = "Quince Yard Studio" });
            db.Scales.Add(new Scale { Id = ScaleId, Name = "Scale 2", CapacityMilligrams = 5_000_000, ReadabilityMilligrams = 100 });
            db.Users.Add(NewPerson(AnaId, "Ana", "An", PersonRole.Owner));
            db.Users.Add(NewPerson(BoId, "Bo", "Bo", PersonRole.Maker));
            await db.SaveChangesAsync();
        }

        NpgsqlConnection.ClearAllPools();
        return name;
    }

    private static Person NewPerson(Guid id, string name, string initials, PersonRole role) => new()
    {
        Id = id, UserName = name, NormalizedUserName = name.ToUpperInvariant(), DisplayName = name, Initials = initials, Role = role,
        SecurityStamp = $"stamp of {name}", JoinedAt = Monday,
    };
}
