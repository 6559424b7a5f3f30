using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace MakerStudio.Services.Schema;

/// <summary>Lets <c>dotnet ef migrations add</c> build the model without a server.</summary>
internal sealed class StudioDbDesign : IDesignTimeDbContextFactory<StudioDb>
{
    public StudioDb CreateDbContext(string[] args) => new(StudioDbOptions.For("Host=design-time-only"));
}

internal static class StudioDbOptions
{
    public static DbContextOptions<StudioDb> For(string connectionString)
    {
        var builder = new DbContextOptionsBuilder<StudioDb>();
        Configure(builder, connectionString);
        return builder.Options;
    }

    public static void Configure(DbContextOptionsBuilder builder, string connectionString) =>
        builder.UseNpgsql(connectionString).UseSnakeCaseNamingConvention();
}
