namespace MakerStudio.Core.Labels.Drawing;

/// <summary>What each ink looks like, in the PDF and on the page alike; as in CSS.</summary>
public static class Inks
{
    /// <summary>"#000000".</summary>
    public static string Hex(Ink ink) => ink switch { Ink.White => "#FFFFFF", Ink.Red => "#D8141C", _ => "#000000" };
}
