using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>A material in a file.</summary>
/// <param name="Key">What the lines call it, within the file.</param>
/// <param name="DropMassMilligrams">Mass of one drop, from weighing twenty; null where nobody did.</param>
public sealed record FileMaterial(string Key, AssessedMaterial Facts, decimal? DropMassMilligrams = null);

/// <param name="Material">Key of the material.</param>
/// <param name="Amount">In the words of the basis; null is the rest.</param>
public sealed record FileLine(string Material, decimal? Amount, LineBasis Basis);

/// <summary>One formula with its materials: what the open format holds. See docs/format/README.md.</summary>
/// <param name="Lines">In the order of addition.</param>
/// <param name="PackMillilitres">Capacity of the smallest pack.</param>
/// <param name="EnoughScentPercent">Of what the kind's load is a share of; null where not tried.</param>
/// <param name="Market">Where it is sold and by which limits; null leaves that to the reader.</param>
public sealed record FormulaDocument(
    string Name,
    ProductKind Kind,
    IReadOnlyList<FileLine> Lines,
    IReadOnlyList<FileMaterial> Materials,
    MeasuredFacts Measured,
    decimal? PackMillilitres = null,
    decimal? EnoughScentPercent = null,
    bool? HasSealedSpray = null,
    string? Note = null,
    MarketChoices? Market = null)
{
    private const decimal Percent = 100m;

    /// <summary>The version this program writes, and the only one it reads.</summary>
    public const string Format = "makerstudio/formula/1";

    public FileMaterial Material(string key) => Materials.First(material => material.Key == key);

    /// <summary>Shares by weight, or the faults that stand in their way. Line ids are made from the place of the line: 1, 2, 3 …</summary>
    public (AssessedFormula? Formula, IReadOnlyList<FileFault> Faults) ToAssessed()
    {
        TypedLine[] typed = [.. Lines.Select((line, i) => Typed(line, IdOfLine(i)))];
        if (Core.Blending.Formulation.Normalise(typed) is FormulationResult.CannotNormalise cannot)
        {
            return (null, [.. cannot.Problems.Select(problem => new FileFault(
                problem.LineId is { } id ? $"$.formula.lines[{IndexOf(id)}]" : "$.formula.lines", problem.Problem))]);
        }

        var shares = ((FormulationResult.Normalised)Core.Blending.Formulation.Normalise(typed)).Lines;
        return (new(
            Kind,
            [.. Lines.Select((line, i) => new AssessedLine(IdOfLine(i), Material(line.Material).Facts, shares[i].Fraction, line.Basis))],
            Measured,
            PackMillilitres,
            EnoughScentPercent / Percent,
            HasSealedSpray), []);
    }

    /// <summary>Place of a line among the lines, from 0.</summary>
    public static int IndexOf(Guid lineId) => BitConverter.ToInt32(lineId.ToByteArray(), 0) - 1;

    private static Guid IdOfLine(int index) => new(index + 1, 0, 0, new byte[8]);

    private TypedLine Typed(FileLine line, Guid id)
    {
        var material = Material(line.Material);
        return new(
            id,
            line.Amount,
            line.Basis,
            material.Facts.Density,
            material.Facts.Kind == Core.Materials.MaterialKind.Wax,
            material.DropMassMilligrams);
    }
}
