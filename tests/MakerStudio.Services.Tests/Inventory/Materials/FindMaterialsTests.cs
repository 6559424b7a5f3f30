using System.Diagnostics;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

public class FindMaterialsTests
{
    [Theory]
    [InlineData("fig", "Fig 100% leaf", "Fig fragrance oil")]
    [InlineData("oil FIG", "Fig fragrance oil")]
    [InlineData("%", "Fig 100% leaf")]
    [InlineData("_", "Bottle_100 mL")]
    [InlineData("\\", "Wax \\ soy")]
    [InlineData("100%", "Fig 100% leaf")]
    [InlineData("25265-71", "DPG")]
    [InlineData("ff-09", "Fig fragrance oil")]
    [InlineData("alder", "Fig fragrance oil")]
    [InlineData("' OR 1=1--")]
    [InlineData("id;drop table materials")]
    [InlineData("(a+)+$")]
    [InlineData("\0", "Bottle_100 mL", "DPG", "Fig 100% leaf", "Fig fragrance oil", "Wax \\ soy")] // left out of what is looked for
    [InlineData("\uD800", "Bottle_100 mL", "DPG", "Fig 100% leaf", "Fig fragrance oil", "Wax \\ soy")]
    [InlineData("", "Bottle_100 mL", "DPG", "Fig 100% leaf", "Fig fragrance oil", "Wax \\ soy")]
    public async Task Find_Typed_TakesEverySignAsALetter(string text, params string[] names)
    {
        await using var studio = await NewShelfAsync();
        Assert.Equal(names, (await studio.Get<Materials>().FindAsync(new MaterialSearch { Text = text })).Select(m => m.Name));
    }

    [Fact]
    public async Task Suggest_NamesThatBeginWithIt_ComeFirst()
    {
        await using var studio = await NewShelfAsync();
        await studio.MaterialAsync("Amber oil", MaterialKind.FragranceOil);
        await studio.MaterialAsync("Oil of cedar", MaterialKind.EssentialOil);

        var found = await studio.Get<Materials>().SuggestAsync(new MaterialSearch { Text = "oil" });

        Assert.Equal(["Oil of cedar", "Amber oil", "Fig fragrance oil"], found.Select(m => m.Name));
    }

    [Fact]
    public async Task Find_ByKindAndUnit_LeavesOutTheRest()
    {
        await using var studio = await NewShelfAsync();
        var materials = studio.Get<Materials>();
        Assert.Equal(["Bottle_100 mL"], (await materials.FindAsync(new MaterialSearch { StockedIn = StockUnit.Each })).Select(m => m.Name));
        Assert.Equal(["DPG", "Wax \\ soy"], (await materials.FindAsync(new MaterialSearch { Kinds = [MaterialKind.Fixative, MaterialKind.Wax] })).Select(m => m.Name));
    }

    [Fact]
    public async Task Find_PageByPage_MeetsEveryRowOnceAlsoWithEqualNames()
    {
        await using var studio = await TestStudio.NewAsync();
        foreach (var name in new[] { "b", "A", "B", "a", "c", "ä", "Z" })
        {
            await studio.MaterialAsync(name, MaterialKind.Wax);
        }

        var materials = studio.Get<Materials>();
        List<MaterialRow> seen = [];
        for (IReadOnlyList<MaterialRow> page; (page = await materials.FindAsync(new MaterialSearch { Take = 2, After = seen.LastOrDefault() })).Count > 0;)
        {
            seen.AddRange(page);
        }

        Assert.Equal(7, seen.Select(m => m.Id).Distinct().Count());
        Assert.Equal(7, seen.Count);
        Assert.Equal(["a", "a", "b", "b", "c", "z", "ä"], seen.Select(m => m.Name.ToLowerInvariant()));
    }

    /// <summary>10,000 materials are a hundred times a large studio; a search there is still far below a blink.</summary>
    [Fact]
    public async Task Find_AmongTenThousand_IsFast()
    {
        await using var studio = await TestStudio.NewAsync();
        await using (var db = studio.Db())
        {
            await db.Database.ExecuteSqlRawAsync("""
                insert into materials (id, name, kind, stocked_in, required_papers, created_at)
                select gen_random_uuid(), 'Material ' || n, 'Wax', 'Gram', '{{}}', now() from generate_series(1, 10000) n
                """);
        }

        var materials = studio.Get<Materials>();
        await materials.FindAsync(new MaterialSearch { Text = "warm" });
        var clock = Stopwatch.StartNew();
        var found = await materials.FindAsync(new MaterialSearch { Text = "9999" });
        clock.Stop();

        Assert.Equal("Material 9999", Assert.Single(found).Name);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(1), $"The search took {clock.ElapsedMilliseconds} ms.");
    }

    private static async Task<TestStudio> NewShelfAsync()
    {
        var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();
        (await materials.AddAsync(studio.Ana, new AddMaterial { Name = "Fig fragrance oil", Kind = MaterialKind.FragranceOil, Suppliers = [new() { Name = "Alder Supply", Code = "FF-0926" }] })).Expect();
        (await materials.AddAsync(studio.Ana, new AddMaterial { Name = "DPG", Kind = MaterialKind.Fixative, Cas = "25265-71-8" })).Expect();
        await studio.MaterialAsync("Fig 100% leaf", MaterialKind.EssentialOil);
        await studio.MaterialAsync("Bottle_100 mL", MaterialKind.Bottle, StockUnit.Each);
        await studio.MaterialAsync("Wax \\ soy", MaterialKind.Wax);
        return studio;
    }
}
