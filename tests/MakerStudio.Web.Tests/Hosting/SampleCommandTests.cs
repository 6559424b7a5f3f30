using MakerStudio.Services.Accounts;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Hosting;

namespace MakerStudio.Web.Tests.Hosting;

/// <summary>What <c>sample</c> says and keeps; what the sample holds is tested with the services.</summary>
public sealed class SampleCommandTests : IAsyncLifetime
{
    private static readonly Uri Address = new("http://localhost:5080");
    private readonly string _folder = Directory.CreateTempSubdirectory("makerstudio-sample-").FullName;
    private TestStudio _studio = default!;

    public async Task InitializeAsync() => _studio = await TestStudio.NewAsync();

    public async Task DisposeAsync()
    {
        await _studio.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private string Kept => Path.Combine(_folder, SampleCommand.SignInFile);

    [Fact]
    public async Task Open_EmptyThenAgain_SaysTheSameWayInThatOpens()
    {
        await EmptyAsync();

        var first = await OpenAsync();
        var again = await OpenAsync();

        Assert.Contains("Making the sample studio", first, StringComparison.Ordinal);
        var kept = await File.ReadAllTextAsync(Kept);
        Assert.Contains(kept.Trim(), first, StringComparison.Ordinal);
        Assert.Equal(kept.Trim(), again.Trim());
        Assert.Contains(Address.ToString(), kept, StringComparison.Ordinal);
        var line = kept.Split('\n').Single(l => l.TrimStart().StartsWith("Ana ", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("Ana", (await _studio.Get<Passphrases>().CheckAsync("Ana", line[1])).Expect().Name);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Kept));
        }

        File.Delete(Kept);
        Assert.Contains("reset-password Ana", await OpenAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_RealStudio_IsRefusedAndNothingIsKept()
    {
        var refused = await Assert.ThrowsAsync<HostingException>(OpenAsync);

        Assert.Contains("Quince Yard Studio is here already and is no sample; it was left as it is.", refused.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(Kept));
    }

    private async Task<string> OpenAsync()
    {
        await using var said = new StringWriter();
        await SampleCommand.OpenAsync(_studio.Get<SampleStudio>(), _folder, Address, said);
        return said.ToString();
    }

    private async Task EmptyAsync()
    {
        await using var connection = new Npgsql.NpgsqlConnection(_studio.OwnerConnectionString);
        await connection.OpenAsync();
        await using var command = new Npgsql.NpgsqlCommand("delete from people; delete from scales; delete from studio", connection);
        await command.ExecuteNonQueryAsync();
    }
}
