using System.Text;
using System.Text.Json.Nodes;
using MakerStudio.Services.Exchange.FormulaFile;
using MakerStudio.Services.Formulation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Exchange.FormulaFile;

/// <summary>The library's formulas as files, and back, on a real database.</summary>
public sealed class FormulaFilesTests : IAsyncLifetime
{
    private static readonly string Fig = Encoding.UTF8.GetString(FormatFiles.Fig);
    private TestStudio _studio = default!;

    public async Task InitializeAsync() => _studio = await TestStudio.NewAsync();

    public async Task DisposeAsync() => await _studio.DisposeAsync();

    private FormulaFiles Files => _studio.Get<FormulaFiles>();

    [Fact]
    public async Task BringIn_ThenSave_GivesTheSameFormula()
    {
        var brought = await DoneAsync(new BringInFormula { Json = Fig });

        var saved = await Files.SaveAsync(brought.FormulaId, 1);

        Assert.True(FormatFiles.IsFormula(saved!.Content));
        Assert.Equal("fig-v1.json", saved.Name);
        var before = JsonNode.Parse(FormulaDocumentWriter.Write(FormulaDocumentReader.Read(FormatFiles.Fig).Document!))!;
        var after = JsonNode.Parse(saved.Content)!;
        Assert.Equal(Lines(before), Lines(after));
        foreach (var (expected, actual) in Materials(before).Zip(Materials(after)))
        {
            Assert.True(JsonNode.DeepEquals(expected, actual), $"{expected.ToJsonString()}\n{actual.ToJsonString()}");
        }
    }

    [Fact]
    public async Task LookAt_SaysWhatWouldBeAdded_AndDoesNothing()
    {
        var seen = await Files.LookAtAsync(Fig);

        Assert.Empty(seen.Faults);
        Assert.All(seen.Materials, m => Assert.Equal(FoundBy.Nothing, m.By));
        await using var db = _studio.Db();
        Assert.Equal((0, 0), (await db.Formulas.CountAsync(), await db.Materials.CountAsync()));
    }

    [Fact]
    public async Task BringIn_MaterialsThatAreHere_AreUsedAndStayAsTheyAre()
    {
        await DoneAsync(new BringInFormula { Json = Fig });
        await using var db = _studio.Db();
        var count = await db.Materials.CountAsync();

        var again = await DoneAsync(new BringInFormula { Json = Fig, Name = "Fig again" });

        Assert.Empty(again.Added);
        Assert.Equal(count, await db.Materials.CountAsync());
        Assert.All((await Files.LookAtAsync(Fig)).Materials, m => Assert.Equal(FoundBy.Name, m.By));
    }

    [Fact]
    public async Task BringIn_NameIsTaken_RefusesAndAddsNothing()
    {
        await DoneAsync(new BringInFormula { Json = Fig });
        await using var db = _studio.Db();
        var count = await db.Materials.CountAsync();
        var other = FormatFiles.FigNode();
        foreach (var material in other["materials"]!.AsArray())
        {
            material!["name"] = $"{material["name"]} of another house";
        }

        var outcome = await Files.BringInAsync(_studio.Ana, new BringInFormula { Json = other.ToJsonString() });

        Assert.IsType<FormulaNameTaken>(outcome.Refusal);
        Assert.Equal(count, await db.Materials.CountAsync());
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"format\":\"makerstudio/formula/1\"}")]
    public async Task BringIn_FileWithFaults_NamesThemAndAddsNothing(string json)
    {
        var refusal = Assert.IsType<FileHasFaults>((await Files.BringInAsync(_studio.Ana, new BringInFormula { Json = json })).Refusal);

        Assert.NotEmpty(refusal.Faults);
        Assert.All(refusal.Faults, f => Assert.StartsWith("$", f.Path, StringComparison.Ordinal));
        await using var db = _studio.Db();
        Assert.Equal((0, 0), (await db.Formulas.CountAsync(), await db.Materials.CountAsync()));
    }

    [Fact]
    public async Task BringIn_SameRequestManyTimes_MakesOneFormula()
    {
        var request = new BringInFormula { Json = Fig };

        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Files.BringInAsync(_studio.Ana, request)));

        await using var db = _studio.Db();
        Assert.Equal(1, await db.Formulas.CountAsync());
    }

    private async Task<FormulaBroughtIn> DoneAsync(BringInFormula request) =>
        Assert.IsType<Done<FormulaBroughtIn>>(await Files.BringInAsync(_studio.Ana, request)).Value;

    private static string[] Lines(JsonNode file)
    {
        var names = file["materials"]!.AsArray().ToDictionary(m => m!["id"]!.ToString(), m => m!["name"]!.ToString());
        return [.. file["formula"]!["lines"]!.AsArray().Select(l => $"{names[l!["material"]!.ToString()]} {l["amount"]?.ToJsonString()}")];
    }

    /// <summary>Ids within a file are made anew, and which papers are missing is seen where the material lies; all else must come back.</summary>
    private static JsonNode[] Materials(JsonNode file) => [.. file["materials"]!.AsArray().OrderBy(m => m!["name"]!.ToString(), StringComparer.Ordinal).Select(m =>
    {
        var facts = m!.DeepClone().AsObject();
        facts.Remove("id");
        facts.Remove("missingPapers");
        return (JsonNode)facts;
    })];
}
