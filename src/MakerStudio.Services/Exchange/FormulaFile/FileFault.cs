namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>One thing wrong with a file.</summary>
/// <param name="Path">The place, as a JSON path: <c>$.formula.lines[2].amount.unit</c>.</param>
/// <param name="Says">What is wrong, and what to do.</param>
public sealed record FileFault(string Path, string Says)
{
    public override string ToString() => $"{Path}: {Says}";
}
