namespace MakerStudio.Core.Workings;

/// <summary>How a figure came to be known. It travels with the figure, so that a page can say what to check.</summary>
public enum DataStatus
{
    /// <summary>V: read in the text that is cited.</summary>
    Read,

    /// <summary>V2: read in a second-hand text, or in sources that disagree.</summary>
    Secondary,

    /// <summary>M: recalled, and not read anywhere.</summary>
    Memory,

    /// <summary>D: worked out from other figures, or from the wording of a rule.</summary>
    Derived,

    /// <summary>What the trade usually does; no source stands behind it, and the reference tables have no letter for it.</summary>
    CommonPractice,
}

public static class DataStatuses
{
    public static string Letter(DataStatus status) => status switch
    {
        DataStatus.Read => "V",
        DataStatus.Secondary => "V2",
        DataStatus.Memory => "M",
        DataStatus.Derived => "D",
        _ => "–",
    };

    /// <exception cref="FormatException">Not one of V, V2, M, D.</exception>
    public static DataStatus Of(string letter) => letter switch
    {
        "V" => DataStatus.Read,
        "V2" => DataStatus.Secondary,
        "M" => DataStatus.Memory,
        "D" => DataStatus.Derived,
        _ => throw new FormatException($"\"{letter}\" is not a data status. Write V, V2, M or D."),
    };

    /// <summary>The status of what rests on two figures: that of the one less well known.</summary>
    public static DataStatus Weaker(DataStatus one, DataStatus other) => Strength(one) <= Strength(other) ? one : other;

    /// <summary>To stand behind a figure on a page.</summary>
    public static string InWords(DataStatus status) => status switch
    {
        DataStatus.Read => "read in the source",
        DataStatus.Secondary => "read second-hand",
        DataStatus.Memory => "from memory of the text: check before relying on it",
        DataStatus.Derived => "worked out",
        _ => "common practice, no source",
    };

    private static int Strength(DataStatus status) => status switch
    {
        DataStatus.CommonPractice => 0,
        DataStatus.Memory => 1,
        DataStatus.Secondary => 2,
        DataStatus.Derived => 3,
        _ => 4,
    };
}
