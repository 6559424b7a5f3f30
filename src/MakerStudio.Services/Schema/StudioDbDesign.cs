using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Services.Schema;

/// <summary>Lets <c>dotnet ef migrations add</c> build the model without a server.</summary>
internal sealed class StudioDbDesign : IDesignTimeDbContextFactory<StudioDb>
{
    public StudioDb CreateDbContext(string[] args) => new(StudioDbOptions.For("Host=design-time-only"));
}

internal static class StudioDbOptions
{
    /// <summary>
    /// Identity reads its schema version from the application's services, and EF keeps one model a process:
    /// a context built outside a container must say the same version, or passkeys lose their table.
    /// </summary>
    private static readonly ServiceProvider Identity = new ServiceCollection().Configure<IdentityOptions>(UsePasskeySchema).BuildServiceProvider();

    public static void UsePasskeySchema(IdentityOptions options) => options.Stores.SchemaVersion = IdentitySchemaVersions.Version3;

    public static DbContextOptions<StudioDb> For(string connectionString)
    {
        var builder = new DbContextOptionsBuilder<StudioDb>();
        Configure(builder, connectionString);
        builder.UseApplicationServiceProvider(Identity);
        return builder.Options;
    }

    public static void Configure(DbContextOptionsBuilder builder, string connectionString) =>
        builder.UseNpgsql(connectionString).UseSnakeCaseNamingConvention();
}
