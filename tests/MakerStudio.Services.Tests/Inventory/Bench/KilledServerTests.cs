using System.Diagnostics;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.LocalPostgres;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace MakerStudio.Services.Tests.Inventory.Bench;

/// <summary>Postgres is killed in the middle of a stream of weighings; its settings are the durable ones of the real studio.</summary>
public sealed class KilledServerTests : IAsyncLifetime
{
    private const int Weighings = 60;
    private const int KillAfter = 15;
    private const long EachMilligrams = 1_000;

    private static readonly Actor Ana = new(Guid.CreateVersion7(), "stamp");
    private readonly LocalClusterOptions _options = new(Path.Combine(Path.GetTempPath(), $"makerstudio-crash-{Guid.NewGuid():N}"));

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        Assert.True(await LocalCluster.DeleteAsync(_options));
    }

    [Fact]
    public async Task Record_ServerKilledMidStream_EachIsInOrOutAndResendingCompletesOnce()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);
        await StudioSchema.MigrateAsync(cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole), LocalCluster.AppRole);
        var app = cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AppRole);
        await using var services = new ServiceCollection().AddLogging().AddStudioServices(app).BuildServiceProvider();
        var sheets = services.GetRequiredService<WeighSheets>();
        var (batch, line, lot) = await SeedAsync(app, services.GetRequiredService<Batches>());
        var requests = Enumerable.Range(0, Weighings).Select(_ => new RecordWeighing
        {
            BatchId = batch, LineId = line, LotId = lot, NetMilligrams = EachMilligrams, AsTyped = true,
        }).ToList();

        var killed = cluster.ServerProcessId;
        var answered = 0;
        var confirmed = new HashSet<Guid>();
        foreach (var request in requests)
        {
            try
            {
                var sending = sheets.RecordAsync(Ana, request);
                if (++answered == KillAfter)
                {
                    await KillAsync(killed);
                }

                if (await sending is Done<Recorded>)
                {
                    confirmed.Add(request.RequestId);
                }
            }
            catch (Exception e) when (e is NpgsqlException or InvalidOperationException)
            {
                // The line is down: exactly what the sheet keeps in the browser and sends again.
            }
        }

        await RestartedAsync(cluster, killed);
        NpgsqlConnection.ClearAllPools();
        await AgreesAsync(app, lot, confirmed);
        foreach (var request in requests)
        {
            (await sheets.RecordAsync(Ana, request)).Expect();
        }

        await using var db = new StudioDb(StudioDbOptions.For(app));
        Assert.Equal(Weighings, await db.Weighings.CountAsync());
        Assert.Equal(0, (await db.LotBalances.SingleAsync()).OnHand);
        Assert.Equal(0, await db.Movements.SumAsync(m => m.Change));
    }

    /// <summary>What was confirmed is there; every weighing has its movement, and the balance is their sum.</summary>
    private static async Task AgreesAsync(string app, Guid lot, HashSet<Guid> confirmed)
    {
        await using var db = new StudioDb(StudioDbOptions.For(app));
        var stored = await db.Weighings.Select(w => w.RequestId).ToListAsync();
        Assert.Subset(stored.ToHashSet(), confirmed);
        Assert.Equal(stored.Count, stored.Distinct().Count());
        Assert.Equal(stored.Order(), (await db.Movements.Where(m => m.Kind == MovementKind.Use).Select(m => m.RequestId).ToListAsync()).Order());
        Assert.Equal(stored.Order(), (await db.HandledRequests.Where(r => r.Command == nameof(RecordWeighing)).Select(r => r.RequestId).ToListAsync()).Order());
        Assert.Equal(await db.Movements.Where(m => m.LotId == lot).SumAsync(m => m.Change), (await db.LotBalances.SingleAsync()).OnHand);
    }

    private static async Task<(Guid Batch, Guid Line, Guid Lot)> SeedAsync(string app, Batches batches)
    {
        await using var db = new StudioDb(StudioDbOptions.For(app));
        db.Studio.Add(new MakerStudio.Services.Schema.Studio { Name = "Quince Yard Studio" });
        db.Users.Add(new Person
        {
            Id = Ana.PersonId, UserName = "Ana", NormalizedUserName = "ANA", DisplayName = "Ana", Initials = "An", Role = PersonRole.Owner,
            SecurityStamp = Ana.Stamp, JoinedAt = TestStudio.Monday,
        });
        var material = new Material { Name = "DPG", Kind = MaterialKind.Fixative, StockedIn = StockUnit.Gram, CreatedAt = TestStudio.Monday };
        var lot = new Lot
        {
            Code = "D-1", MaterialId = material.Id, ReceivedOn = new DateOnly(2026, 9, 24), OpenedOn = new DateOnly(2026, 9, 24), Status = LotStatus.Released,
            UnitCost = 0.0112m, Balance = new LotBalance { OnHand = Weighings * EachMilligrams },
        };
        db.AddRange(material, lot, new Movement
        {
            LotId = lot.Id, Kind = MovementKind.Receipt, Change = Weighings * EachMilligrams, OnHandAfter = Weighings * EachMilligrams, UnitCost = 0.0112m,
            PersonId = Ana.PersonId, At = TestStudio.Monday, RequestId = Guid.CreateVersion7(),
        });
        var version = new FormulaVersion { Number = 1, CreatedById = Ana.PersonId, CreatedAt = TestStudio.Monday, KeptAt = TestStudio.Monday };
        version.Lines.Add(new FormulaLine { Position = 1, MaterialId = material.Id, Amount = 100m, Fraction = 1m });
        db.Add(new Formula { Name = "Plain", ProductKind = "sachet", CreatedAt = TestStudio.Monday, Versions = { version } });
        await db.SaveChangesAsync();
        version.State = Services.Formulation.FormulaState.Released;
        await db.SaveChangesAsync();
        // Ten times what is weighed, so that the line stays open throughout.
        var planned = (await batches.PlanAsync(Ana, new PlanBatch { FormulaVersionId = version.Id, TargetMilligrams = 10 * Weighings * EachMilligrams })).Expect();
        (await batches.StartWeighingAsync(Ana, new StartWeighing { BatchId = planned.BatchId })).Expect();
        return (planned.BatchId, (await db.BatchLines.SingleAsync()).Id, lot.Id);
    }

    private static async Task KillAsync(int process)
    {
        using var kill = Process.Start("kill", ["-9", process.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
    }

    private static async Task RestartedAsync(LocalCluster cluster, int killed)
    {
        var waited = Stopwatch.StartNew();
        while (cluster.ServerProcessId == killed && waited.Elapsed < TimeSpan.FromSeconds(30))
        {
            await Task.Delay(50);
        }

        Assert.NotEqual(killed, cluster.ServerProcessId);
    }
}
