using MakerStudio.Core.Assessing;
using MakerStudio.Services.Exchange.FormulaFile;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// Assesses a formula in the open format without database or server. Ends with 0 and the assessment on standard output,
/// or with 2 and one line for each fault on standard error.
/// </summary>
internal static class AssessCommand
{
    private const int Faulty = 2;
    private const string StandardInput = "-";

    /// <param name="words">One: the file, or "-".</param>
    /// <param name="clock">Where the file names no market, it is read by today's rules of the EU.</param>
    internal static async Task<int> RunAsync(string[] words, Func<Stream> input, Stream output, TextWriter errors, TimeProvider clock)
    {
        if (words is not [var file])
        {
            return await FaultAsync(errors, "Name one file: ./deploy/studio assess FILE.json, or - for standard input.");
        }

        byte[] bytes;
        try
        {
            await using var stream = file == StandardInput ? input() : File.OpenRead(file);
            bytes = await ReadAsync(stream);
        }
        catch (Exception unread) when (unread is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return await FaultAsync(errors, $"{file}: The file could not be read ({unread.Message.TrimEnd('.')}). Check its path and that you may read it.");
        }

        var (name, assessment, faults) = Assess(bytes, clock);
        foreach (var fault in faults)
        {
            await errors.WriteLineAsync(fault.ToString());
        }

        if (assessment is null)
        {
            return Faulty;
        }

        await output.WriteAsync(AssessmentDocument.Write(name, assessment));
        await output.FlushAsync();
        return 0;
    }

    private static (string Name, Assessment? Assessment, IReadOnlyList<FileFault> Faults) Assess(byte[] bytes, TimeProvider clock)
    {
        var reading = FormulaDocumentReader.Read(bytes);
        if (reading.Document is not { } document)
        {
            return ("", null, reading.Faults);
        }

        var (formula, faults) = document.ToAssessed();
        if (formula is null)
        {
            return ("", null, faults);
        }

        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var assessment = Assessment.Of(formula, document.Market ?? new(LabelScheme.EuropeanUnion, [], null, [], today));
        return (document.Name, assessment, assessment is null
            ? [new("$.formula.lines", "No line has an amount, so there is nothing to assess. Write the amounts.")]
            : []);
    }

    /// <summary>One byte more than is taken tells the reader that there is too much.</summary>
    private static async Task<byte[]> ReadAsync(Stream stream)
    {
        var bytes = new byte[FormulaDocumentReader.MostBytes + 1];
        var read = await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false);
        return bytes[..read];
    }

    private static async Task<int> FaultAsync(TextWriter errors, string says)
    {
        await errors.WriteLineAsync(says);
        return Faulty;
    }
}
