using MakerStudio.Core.Hazards;
using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Tests.Labels;

public class LabelFaceTests
{
    /// <summary>Of the font's own tables, read with another tool: OS/2 sxHeight 1082 and sCapHeight 1456 of 2048 units.</summary>
    [Fact]
    public void Face_Heights_AreThoseOfTheFont()
    {
        Assert.Equal(1082.0 / 2048, LabelFace.Regular.XHeight, 9);
        Assert.Equal(1456.0 / 2048, LabelFace.Bold.CapitalHeight, 9);
        Assert.InRange(LabelFace.Bold.FigureHeight, 0.70, 0.75);
    }

    [Fact]
    public void Width_OfAText_IsTheSumOfItsLettersAndGrowsWithTheSize()
    {
        foreach (LabelFace face in LabelFace.All)
        {
            double apart = "Fig 100 mL".Sum(letter => face.WidthOf(letter.ToString(), 3));
            Assert.Equal(apart, face.WidthOf("Fig 100 mL", 3), 9);
            Assert.Equal(2 * apart, face.WidthOf("Fig 100 mL", 6), 9);
            Assert.True(face.WidthOf("W", 1) > face.WidthOf("i", 1));
        }
    }

    [Theory]
    [InlineData("Crème brûlée, Łódź, Žluť, Größe, Þorn, ½ × 3 − 2 „“”’ …", "")]
    [InlineData("Ελιά и Роза ℮", "")]
    [InlineData("Fig 漢", "漢")]
    public void Regular_LettersOfEurope_AreThere(string text, string lacks) => Assert.Equal(lacks, string.Concat(LabelFace.Regular.Lacks(text)));

    [Fact]
    public void Scent_LettersOfLatinNames_AreThere() => Assert.Empty(LabelFace.Scent.Lacks("Crème brûlée, Łódź, Žluť, Größe, Þorn & co."));

    [Fact]
    public void Pictograms_EverySymbol_LiesInsideItsFrame() => Assert.All(Enum.GetValues<Pictogram>(), pictogram =>
    {
        IReadOnlyList<Shape> shapes = PictogramShapes.Of(pictogram);
        Assert.Equal([Ink.Red, Ink.White], shapes.Take(2).Select(shape => shape.Ink));
        Assert.True(shapes.Count > 2);
        foreach (Shape shape in shapes.Skip(2))
        {
            foreach (PathStep step in shape.Steps)
            {
                for (int i = 0; i < step.Points.Count; i += 2)
                {
                    double reach = Math.Abs(step.Points[i] - 50) + Math.Abs(step.Points[i + 1] - 50) + (shape.Stroke / 2);
                    Assert.True(reach < 43.6, $"{pictogram}: {step.Points[i]} {step.Points[i + 1]} reaches {reach}");
                }
            }
        }
    });
}
