using System.Text;
using MakerStudio.Services.Exchange;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

/// <summary>Short ways to send a file, look at it and bring it in.</summary>
internal static class FilesToBringIn
{
    public static Task<Outcome<BroughtFileAdded>> SendAsync(this TestStudio studio, BringInKind kind, string text, Encoding? encoding = null)
    {
        var code = encoding ?? new UTF8Encoding(false);
        return studio.SendAsync(kind, [.. code.GetPreamble(), .. code.GetBytes(text)]);
    }

    public static Task<Outcome<BroughtFileAdded>> SendAsync(this TestStudio studio, BringInKind kind, byte[] bytes) =>
        studio.Get<BroughtFiles>().AddAsync(studio.Ana, new AddBroughtFile { Kind = kind, Name = "from before.csv" }, new MemoryStream(bytes));

    public static async Task<BringInPreview> LookAsync(this TestStudio studio, BringInKind kind, string text, char? mark = null) =>
        (await studio.Get<BroughtFiles>().PreviewAsync((await studio.SendAsync(kind, text)).Expect().FileId, mark, take: 200))!;

    public static Task<Outcome<FileTakenIn>> TakeAsync(this TestStudio studio, BringInPreview seen, string? mark = null) =>
        studio.Get<BroughtFiles>().TakeInAsync(studio.Ana, new TakeInFile { FileId = seen.FileId, DecimalMark = mark });

    public static async Task<FileTakenIn> BringInAsync(this TestStudio studio, BringInKind kind, string text) =>
        (await studio.TakeAsync(await studio.LookAsync(kind, text))).Expect();

    /// <summary>The reason of the only refused row.</summary>
    public static string WhyRefused(this BringInPreview seen) => Assert.Single(seen.Rows, r => r.Fate == RowFate.Refused).Why!;

    public static async Task<string> RefusedAsync(this TestStudio studio, Guid fileId)
    {
        using var written = new MemoryStream();
        await studio.Get<BroughtFiles>().WriteRefusedAsync(fileId, null, written);
        return Encoding.UTF8.GetString(written.ToArray()[3..]).ReplaceLineEndings("\n");
    }
}
