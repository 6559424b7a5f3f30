using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace MakerStudio.Services.Schema;

/// <summary>Ready means: the database answers a question through the app's own role.</summary>
internal sealed class DatabaseReady(IDbContextFactory<StudioDb> contexts) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellationToken);
        // After a restart of the server the first try meets a pooled connection that is dead; the second makes a new one.
        return await db.Database.CanConnectAsync(cancellationToken) || await db.Database.CanConnectAsync(cancellationToken)
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("The database does not answer.");
    }
}

public static class DatabaseReadySetup
{
    public static IHealthChecksBuilder AddStudioDatabase(this IHealthChecksBuilder checks) =>
        checks.AddCheck<DatabaseReady>("database", timeout: TimeSpan.FromSeconds(5));
}
