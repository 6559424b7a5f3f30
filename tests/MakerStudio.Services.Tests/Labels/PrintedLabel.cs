using System.Diagnostics;
using System.Globalization;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace MakerStudio.Services.Tests.Labels;

/// <summary>Reads a printed label back: its letters, and its code off a picture of it.</summary>
internal static class PrintedLabel
{
    public const double MillimetresPerPoint = 25.4 / 72;

    /// <summary>All letters in the order they were set, without white space.</summary>
    public static string TextOf(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return Bare(string.Concat(document.GetPages().SelectMany(page => page.Letters).Select(letter => letter.Value)));
    }

    public static string Bare(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));

    public static IReadOnlyList<Letter> LettersOf(byte[] pdf, int page)
    {
        using var document = PdfDocument.Open(pdf);
        return document.GetPage(page).Letters;
    }

    /// <summary>What the first square code on the first page says, at 300 dots an inch as a printer would set it.</summary>
    public static async Task<string?> CodeOfAsync(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory("label");
        try
        {
            var file = Path.Combine(folder.FullName, "label.pdf");
            await File.WriteAllBytesAsync(file, pdf);
            var start = new ProcessStartInfo("pdftoppm", ["-gray", "-r", "300", "-f", "1", "-l", "1", "-singlefile", file, Path.Combine(folder.FullName, "picture")]);
            using var drawing = Process.Start(start)!;
            await drawing.WaitForExitAsync();
            Assert.Equal(0, drawing.ExitCode);
            var (width, height, grey) = ReadGrey(await File.ReadAllBytesAsync(Path.Combine(folder.FullName, "picture.pgm")));
            var source = new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
            return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true })?.Text;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Portable greymap, binary: "P5", width, height and 255 in text, then a byte a dot.</summary>
    private static (int Width, int Height, byte[] Grey) ReadGrey(byte[] file)
    {
        var at = 0;
        string Word()
        {
            var start = at;
            while (!char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            return System.Text.Encoding.ASCII.GetString(file, start, at++ - start);
        }

        Assert.Equal("P5", Word());
        var (width, height) = (int.Parse(Word(), CultureInfo.InvariantCulture), int.Parse(Word(), CultureInfo.InvariantCulture));
        Assert.Equal("255", Word());
        return (width, height, file[at..]);
    }
}
