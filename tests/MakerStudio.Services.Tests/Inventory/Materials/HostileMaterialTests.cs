using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>Text meant to do harm is either kept to the letter or refused in words; never a fault, never a lost row.</summary>
public class HostileMaterialTests
{
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("<img src=x onerror=alert(1)>")]
    [InlineData("[x](javascript:alert(1))")]
    [InlineData("' OR 1=1--")]
    [InlineData("Robert'); drop table materials;--")]
    [InlineData("=HYPERLINK(\"http://example.test\")")]
    [InlineData("%_\\")]
    [InlineData("{\"$gt\":\"\"}")]
    [InlineData("Zoë’s Öl 香り 🍋")]
    [InlineData("a\u0301\u0323")]
    public async Task Add_NameAndNotesThatLookLikeCode_AreKeptToTheLetter(string text)
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();

        var id = (await materials.AddAsync(studio.Ana, MaterialsTests.Ethanol() with { Name = text, Notes = text + "\n" + text })).Expect().Id;

        var form = (await materials.FormAsync(id))!;
        Assert.Equal(text, form.Name);
        Assert.Equal(text + "\n" + text, form.Notes);
        Assert.Equal([text], (await materials.FindAsync(new MaterialSearch { Text = text })).Select(m => m.Name));
    }

    [Theory]
    [InlineData("Fig\0oil")]
    [InlineData("Fig \uD83C oil")]
    [InlineData("Fig \u202Egnp.exe")]
    [InlineData("Fig\noil")]
    [InlineData("\u001B[31mFig")]
    [InlineData("Z\u0301\u0301\u0301\u0301\u0301\u0301\u0301\u0301lgo")]
    public async Task Add_NameThatCannotBeRead_IsRefusedInWords(string name)
    {
        await using var studio = await TestStudio.NewAsync();
        var materials = studio.Get<Materials>();

        var refusal = (await materials.AddAsync(studio.Ana, MaterialsTests.Ethanol() with { Name = name })).Refusal;

        var problem = Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems);
        Assert.Equal(nameof(MaterialForm.Name), problem.Field);
        Assert.StartsWith("The name h", problem.Problem, StringComparison.Ordinal);
        Assert.Empty(await materials.FindAsync(new MaterialSearch()));
    }

    [Fact]
    public async Task Add_NameOfTenMegabytes_IsRefusedAtOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var refusal = (await studio.Get<Materials>().AddAsync(studio.Ana, MaterialsTests.Ethanol() with { Name = new string('a', 10_000_000) })).Refusal;
        Assert.Equal("The name has at most 120 characters.", Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Problem);
    }

    [Fact]
    public async Task Add_NulInEveryTextField_IsNamedField()
    {
        await using var studio = await TestStudio.NewAsync();
        var request = MaterialsTests.Ethanol() with
        {
            Name = "\0", Cas = "\0", Notes = "\0", Suppliers = [new() { Name = "\0", Code = "\0", PackNote = "\0" }],
        };
        var problems = Assert.IsType<NotAcceptable>((await studio.Get<Materials>().AddAsync(studio.Ana, request)).Refusal).Problems;
        Assert.Equal(["Cas", "Name", "Notes", "Suppliers[0].Code", "Suppliers[0].Name", "Suppliers[0].PackNote"], problems.Select(p => p.Field).Distinct().Order());
    }
}
