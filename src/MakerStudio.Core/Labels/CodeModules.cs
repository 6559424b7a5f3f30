namespace MakerStudio.Core.Labels;

/// <summary>The squares of a square code, without the white around it.</summary>
/// <param name="rows">As many rows as columns; true is dark.</param>
public sealed class CodeModules(IReadOnlyList<IReadOnlyList<bool>> rows)
{
    /// <summary>White squares that a reader needs on every side (ISO/IEC 18004; from memory).</summary>
    public const int Quiet = 4;

    public int Side => rows.Count;

    public bool IsDark(int row, int column) => rows[row][column];
}
