using MakerStudio.Services;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Tests;

/// <summary>Pages know no database: see docs/decisions/wall.md.</summary>
public class WallTests
{
    private static readonly string[] OfTheDatabase = ["Microsoft.EntityFrameworkCore", "Npgsql", "Microsoft.AspNetCore.Identity.EntityFrameworkCore"];

    [Fact]
    public void Web_ReferencesNoDatabaseAssembly()
    {
        var web = typeof(LivePage).Assembly;

        Assert.Equal("MakerStudio.Web", web.GetName().Name);
        Assert.Empty(DatabaseAssembliesOf(web));
    }

    /// <summary>The same look at the other side of the wall finds them: it can see.</summary>
    [Fact]
    public void Services_ReferencesThem() => Assert.NotEmpty(DatabaseAssembliesOf(typeof(StudioStore).Assembly));

    private static IEnumerable<string> DatabaseAssembliesOf(System.Reflection.Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(name => OfTheDatabase.Any(d => name.StartsWith(d, StringComparison.Ordinal)));
}
