using System.Globalization;

namespace MakerStudio.Core.Labels.Drawing;

/// <param name="Command">M, L, C or Z.</param>
/// <param name="Points">x and y in turn: two numbers for M and L, six for C, none for Z.</param>
public sealed record PathStep(char Command, IReadOnlyList<double> Points);

/// <summary>
/// One area or line of a drawing, in the path language of SVG with absolute M, L, C and Z. With a stroke it is a line with
/// round ends, without one an area filled by the even-odd rule.
/// </summary>
public sealed class Shape(string data, Ink ink, double stroke = 0)
{
    private readonly Lazy<IReadOnlyList<PathStep>> _steps = new(() => Parse(data));

    public string Data => data;

    public Ink Ink => ink;

    /// <summary>On the field's own scale; 0 fills.</summary>
    public double Stroke => stroke;

    public IReadOnlyList<PathStep> Steps => _steps.Value;

    /// <exception cref="FormatException">A command that is none of M, L, C and Z, or a number that is none.</exception>
    private static List<PathStep> Parse(string data)
    {
        var steps = new List<PathStep>();
        string[] words = data.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < words.Length;)
        {
            char command = words[i++] is [var letter] ? letter : throw new FormatException($"\"{words[i - 1]}\" is no command of a path.");
            int numbers = command switch { 'M' or 'L' => 2, 'C' => 6, 'Z' => 0, _ => throw new FormatException($"\"{command}\" is no command of a path.") };
            steps.Add(new(command, [.. words[i..(i + numbers)].Select(word => double.Parse(word, NumberStyles.Float, CultureInfo.InvariantCulture))]));
            i += numbers;
        }

        return steps;
    }
}
