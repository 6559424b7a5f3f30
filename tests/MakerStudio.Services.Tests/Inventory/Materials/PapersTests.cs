using System.Text;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

public class PapersTests
{
    private static readonly byte[] Pdf = "%PDF-1.7\n%âãÏÓ\n1 0 obj"u8.ToArray();
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13];
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, (byte)'J', (byte)'F', (byte)'I', (byte)'F'];

    [Fact]
    public async Task Add_Sheet_IsReadBackByteForByteAndNoLongerMissing()
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));

        var added = (await papers.AddAsync(studio.Ana, Sds(id) with { Edition = "rev. 4", EditionDate = new DateOnly(2026, 9, 24) })).Expect();

        var file = (await papers.ReadAsync(added.Id))!;
        Assert.Equal(("sds.pdf", "application/pdf"), (file.FileName, file.ContentType));
        Assert.Equal(Pdf, file.Content);
        var row = Assert.Single(await papers.ListAsync(id));
        Assert.Equal(("rev. 4", new DateOnly(2026, 9, 24), "Ana", (long)Pdf.Length), (row.Edition, row.EditionDate, row.AddedBy, row.Size));
        Assert.Empty((await studio.Get<Materials>().ViewAsync(id))!.Missing);
    }

    [Fact]
    public async Task Add_SameRequestTwice_StoresOne()
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));
        var request = Sds(id);

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => papers.AddAsync(studio.Ana, request))));

        Assert.Single(outcomes.Select(o => o.Expect().Id).Distinct());
        Assert.Single(await papers.ListAsync(id));
    }

    [Fact]
    public async Task Add_SameIdWithOtherContent_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));
        var request = Sds(id);
        (await papers.AddAsync(studio.Ana, request)).Expect();

        Assert.IsType<IdUsedForAnother>((await papers.AddAsync(studio.Ana, request with { Content = Jpeg })).Refusal);
        Assert.Single(await papers.ListAsync(id));
    }

    public static TheoryData<string, byte[]> NotPapers => new()
    {
        { "sheet.pdf", "<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>"u8.ToArray() },
        { "sheet.pdf", "<!DOCTYPE html><html><body>hello</body></html>"u8.ToArray() },
        { "sheet.txt", "\n\n  <?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]>"u8.ToArray() },
        { "sheet.txt", "plain at first, <SCRIPT src=x></SCRIPT> later"u8.ToArray() },
        { "sheet.pdf", [0x4D, 0x5A, 0x90, 0, 3, 0, 0, 0] }, // a Windows program
        { "sheet.pdf", "PK\u0003\u0004"u8.ToArray() }, // a zip
        { "sheet.gif", "GIF89a\u0001\0"u8.ToArray() },
        { "sheet.txt", [0xC3, 0x28] }, // broken UTF-8
    };

    [Theory]
    [MemberData(nameof(NotPapers))]
    public async Task Add_OtherTypeByContent_IsRefusedWhateverTheNameSays(string name, byte[] content)
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));

        var refusal = (await papers.AddAsync(studio.Ana, Sds(id) with { FileName = name, Content = content })).Refusal;

        Assert.Contains("whatever its name says", Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Problem, StringComparison.Ordinal);
        Assert.Empty(await papers.ListAsync(id));
    }

    [Fact]
    public async Task Add_PictureThatIsAlsoAPage_IsKeptAsThePictureItIs()
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));
        byte[] both = [.. Jpeg, .. "<html><script>alert(1)</script></html>"u8];

        var added = (await papers.AddAsync(studio.Ana, Sds(id) with { FileName = "evil.html", Content = both })).Expect();

        var file = (await papers.ReadAsync(added.Id))!;
        Assert.Equal(("evil.html.jpg", "image/jpeg"), (file.FileName, file.ContentType));
    }

    [Fact]
    public async Task Add_TenMegabytesFitAndOneByteMoreDoesNot()
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));
        var full = new byte[AddPaper.MostBytes];
        Pdf.CopyTo(full, 0);

        (await papers.AddAsync(studio.Ana, Sds(id) with { Content = full })).Expect();
        var refusal = (await papers.AddAsync(studio.Ana, Sds(id) with { Content = [.. full, 0] })).Refusal;

        Assert.Equal("A paper has at most 10 MB.", Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Problem);
        Assert.Equal(AddPaper.MostBytes, Assert.Single(await papers.ListAsync(id)).Size);
    }

    [Theory]
    [InlineData("../../etc/passwd", "passwd.pdf")]
    [InlineData("C:\\Users\\ana\\sheet.pdf", "sheet.pdf")]
    [InlineData("sheet\r\nSet-Cookie: a=b.pdf", "a=b.pdf")]
    [InlineData("fdp.\u202Eexe.pdf", "fdp.exe.pdf")]
    [InlineData("she\0et\".PDF", "sheet.pdf")]
    [InlineData("  ...  ", "paper.pdf")]
    [InlineData(null, "paper.pdf")]
    [InlineData("\uD800", "paper.pdf")]
    [InlineData("Sicherheitsdatenblatt Öl (März).pdf", "Sicherheitsdatenblatt Öl (März).pdf")]
    public async Task Add_FileName_KeepsOnlyWhatAFileMayBeCalled(string? typed, string kept)
    {
        await using var studio = await TestStudio.NewAsync();
        var (papers, id) = (studio.Get<Papers>(), await MaterialAsync(studio));
        Assert.Equal(kept, (await papers.AddAsync(studio.Ana, Sds(id) with { FileName = typed })).Expect().FileName);
    }

    [Fact]
    public async Task Add_AnalysisWithoutALot_AsksForTheLot()
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await MaterialAsync(studio);
        var refusal = (await studio.Get<Papers>().AddAsync(studio.Ana, Sds(id) with { Kind = PaperKind.CertificateOfAnalysis })).Refusal;
        Assert.Equal("A CoA tells of one lot. Choose the lot.", Assert.Single(Assert.IsType<NotAcceptable>(refusal).Problems).Problem);
    }

    [Fact]
    public async Task Add_LotOfAnotherMaterial_IsNotFound()
    {
        await using var studio = await TestStudio.NewAsync();
        var id = await MaterialAsync(studio);
        var other = await studio.LotAsync(await studio.MaterialAsync("DPG", MaterialKind.Fixative), "D-1", 100m, 0.01m);
        Assert.IsType<NotFound>((await studio.Get<Papers>().AddAsync(studio.Ana, Sds(id) with { LotId = other })).Refusal);
    }

    [Fact]
    public async Task MissingForLot_FollowsWhatIsFiled()
    {
        await using var studio = await TestStudio.NewAsync();
        var papers = studio.Get<Papers>();
        var id = (await studio.Get<Materials>().AddAsync(studio.Ana, new AddMaterial { Name = "Bergamot oil", Kind = MaterialKind.EssentialOil, RequiredPapers = [.. MaterialKinds.DefaultPapers(MaterialKind.EssentialOil)] })).Expect().Id;
        var lot = await studio.LotAsync(id, "N-5", 214m, 0.0885m);
        Assert.Equal([PaperKind.Sds, PaperKind.FragranceCertificate, PaperKind.CertificateOfAnalysis], await papers.MissingForLotAsync(lot));

        (await papers.AddAsync(studio.Ana, Sds(id))).Expect();
        (await papers.AddAsync(studio.Ana, Sds(id) with { Kind = PaperKind.FragranceCertificate })).Expect();
        Assert.Equal([PaperKind.CertificateOfAnalysis], await papers.MissingForLotAsync(lot));

        var coa = (await papers.AddAsync(studio.Bo, Sds(id) with { Kind = PaperKind.CertificateOfAnalysis, LotId = lot, Content = Png })).Expect();
        Assert.Empty((await papers.MissingForLotAsync(lot))!);
        Assert.Empty((await studio.Get<Materials>().ViewAsync(id))!.Lots.Single().Missing);

        (await papers.RemoveAsync(studio.Bo, new RemovePaper { PaperId = coa.Id })).Expect();
        Assert.Equal([PaperKind.CertificateOfAnalysis], await papers.MissingForLotAsync(lot));
        Assert.Contains("Took out CoA", (await studio.Get<Materials>().ViewAsync(id))!.Acts[0].What, StringComparison.Ordinal);
        Assert.Null(await papers.MissingForLotAsync(Guid.NewGuid()));
    }

    [Fact]
    public void Of_ThePlainTypes_AreTakenByContent()
    {
        Assert.Equal(PaperType.Pdf, PaperType.Of(Pdf));
        Assert.Equal(PaperType.Png, PaperType.Of(Png));
        Assert.Equal(PaperType.Jpeg, PaperType.Of(Jpeg));
        Assert.Equal(PaperType.Text, PaperType.Of(Encoding.UTF8.GetBytes("Flammpunkt: 13 °C\r\nDichte < 0,8")));
        Assert.Null(PaperType.Of([]));
    }

    private static async Task<Guid> MaterialAsync(TestStudio studio) =>
        (await studio.Get<Materials>().AddAsync(studio.Ana, MaterialsTests.Ethanol())).Expect().Id;

    private static AddPaper Sds(Guid material) => new() { MaterialId = material, Kind = PaperKind.Sds, FileName = "sds.pdf", Content = Pdf };
}
