using MakerStudio.Core.Blending;

namespace MakerStudio.Core.Tests.Blending;

public class LineBasesTests
{
    [Fact]
    public void EveryBasis_ReadsBackFromItsName() =>
        Assert.All(Enum.GetValues<LineBasis>(), basis => Assert.Equal((basis, null), LineBases.Read(LineBases.Name(basis).ToUpperInvariant())));

    [Theory]
    [InlineData("% w/w", LineBasis.PercentByWeight)]
    [InlineData("% v/v", LineBasis.PercentByVolume)]
    [InlineData("grams", LineBasis.Grams)]
    [InlineData("ml", LineBasis.Millilitres)]
    [InlineData("drop", LineBasis.Drops)]
    public void Read_AnotherSpelling_IsKnown(string text, LineBasis basis) => Assert.Equal((basis, null), LineBases.Read(text));

    [Theory]
    [InlineData("%", "Per cent of what?")]
    [InlineData("parts", "Parts by weight or by volume?")]
    [InlineData("kg", "“kg” is none of:")]
    [InlineData("", "“” is none of:")]
    public void Read_WhatCouldBeSeveral_IsAskedAbout(string text, string why)
    {
        var (basis, said) = LineBases.Read(text);

        Assert.Null(basis);
        Assert.StartsWith(why, said, StringComparison.Ordinal);
    }
}
