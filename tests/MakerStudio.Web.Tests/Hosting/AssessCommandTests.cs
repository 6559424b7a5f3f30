using System.Text;
using System.Text.Json;
using MakerStudio.Web.Hosting;
using Microsoft.Extensions.Time.Testing;

namespace MakerStudio.Web.Tests.Hosting;

public sealed class AssessCommandTests : IDisposable
{
    private const string Spray = """
        {
          "format": "makerstudio/formula/1",
          "formula": { "name": "Plain", "kind": "room-spray-alcohol", "lines": [ { "material": "alcohol", "amount": { "value": 50, "unit": "g" } } ] },
          "materials": [ { "id": "alcohol", "name": "Alcohol", "kind": "solvent", "alcoholStrength": { "value": 96, "unit": "%", "basis": "volume" } } ]
        }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("assess").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Run_FileOfAFormula_PrintsTheAssessmentOfTheDay()
    {
        var (code, output, errors) = await RunAsync([Saved(Spray)]);
        Assert.Equal(0, code);
        Assert.Empty(errors);
        using var json = JsonDocument.Parse(output);
        Assert.Equal("makerstudio/assessment/1", json.RootElement.GetProperty("format").GetString());
        Assert.Equal("2026-11-25", json.RootElement.GetProperty("formula").GetProperty("on").GetString());
        Assert.Equal("Flam. Liq. 2", json.RootElement.GetProperty("classes")[0].GetProperty("category").GetString());
    }

    [Fact]
    public async Task Run_Dash_ReadsStandardInput()
    {
        var (code, output, _) = await RunAsync(["-"], Spray);
        Assert.Equal(0, code);
        Assert.NotEmpty(output);
    }

    [Fact]
    public async Task Run_FaultyFile_PrintsALineForEachAndEndsWithTwo()
    {
        var (code, output, errors) = await RunAsync([Saved(Spray.Replace("\"g\"", "\"oz\"", StringComparison.Ordinal).Replace("96", "196", StringComparison.Ordinal))]);
        Assert.Equal(2, code);
        Assert.Empty(output);
        string[] lines = errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("$.materials[0].alcoholStrength.value: ", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("$.formula.lines[0].amount.unit: ", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_NothingHasAnAmount_EndsWithTwo()
    {
        var (code, _, errors) = await RunAsync([Saved(Spray.Replace("50", "0", StringComparison.Ordinal))]);
        Assert.Equal(2, code);
        Assert.StartsWith("$.formula.lines", errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("not-there.json")]
    [InlineData(".")]
    [InlineData("\0")]
    public async Task Run_FileCannotBeRead_EndsWithTwo(string file)
    {
        var (code, output, errors) = await RunAsync([file == "\0" ? file : Path.Combine(_folder, file)]);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains("could not be read", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_NoFileOrSeveral_EndsWithTwo()
    {
        Assert.Equal(2, (await RunAsync([])).Code);
        Assert.Equal(2, (await RunAsync(["a", "b"])).Code);
    }

    private string Saved(string text)
    {
        string path = Path.Combine(_folder, "formula.json");
        File.WriteAllText(path, text);
        return path;
    }

    private static async Task<(int Code, string Output, string Errors)> RunAsync(string[] words, string input = "")
    {
        using var output = new MemoryStream();
        await using var errors = new StringWriter();
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 11, 25, 12, 0, 0, TimeSpan.Zero));
        int code = await AssessCommand.RunAsync(words, () => new MemoryStream(Encoding.UTF8.GetBytes(input)), output, errors, clock);
        return (code, Encoding.UTF8.GetString(output.ToArray()), errors.ToString());
    }
}
