using System.Globalization;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Bench;

namespace MakerStudio.Web.Tests.Bench;

/// <summary>What the sheet's script sends, and what it is told.</summary>
public class ReadingBodyTests
{
    private static readonly CultureInfo Irish = CultureInfo.GetCultureInfo("en-IE");
    private static readonly CultureInfo German = CultureInfo.GetCultureInfo("de-DE");

    [Theory]
    [InlineData("199.6", "en-IE", 199_600)]
    [InlineData("199,6", "de-DE", 199_600)]
    [InlineData("3.32 kg", "en-IE", 3_320_000)]
    [InlineData("0.005", "en-IE", 5)]
    public void Read_TypedMass_IsTakenToTheMilligram(string text, string culture, long milligrams)
    {
        var (request, why) = new ReadingBody { Text = text }.Read(CultureInfo.GetCultureInfo(culture));
        Assert.Null(why);
        Assert.Equal(milligrams, request!.NetMilligrams);
    }

    [Theory]
    [InlineData("0.0001")]
    [InlineData("200 mL")]
    [InlineData("2 oz")]
    [InlineData("12 %")]
    [InlineData("1e400")]
    [InlineData("")]
    [InlineData(null)]
    public void Read_WhatIsNoMassOfWholeMilligrams_SaysWhyAndRoundsNothing(string? text) =>
        Assert.NotEmpty(new ReadingBody { Text = text }.Read(Irish).Why!);

    [Fact]
    public void Read_GrossWithTare_KeepsBoth()
    {
        var (request, why) = new ReadingBody { Text = "812,4", Tare = "332,4" }.Read(German);
        Assert.Null(why);
        Assert.Equal((812_400, 332_400), (request!.GrossMilligrams, request.TareMilligrams));
    }

    [Fact]
    public void Read_AnsweredWithTheSuggestion_TakesThatInsteadOfTheText()
    {
        var id = Guid.CreateVersion7();
        var (request, _) = new ReadingBody { RequestId = id, Text = "3.32", Milligrams = 3_320_000, Over = "Correct" }.Read(Irish);
        Assert.Equal((id, 3_320_000, OverChoice.Correct), (request!.RequestId, request.NetMilligrams, request.Over));
    }

    [Fact]
    public void Answer_ToAQuestion_CarriesItsAnswersAndToARefusalNone()
    {
        var question = BenchAnswer.Of(new WrongMagnitude(new MagnitudeQuestion(1000, true, 3.32m, AmountUnit.Kilogram), 3_320, 3_320_000, 3_320_000));
        Assert.Equal(("question", nameof(WrongMagnitude)), (question.Kind, question.Name));
        Assert.Equal([AnswerKeys.Suggested, AnswerKeys.AsTyped], question.Answers!.Select(a => a.Key));
        var refusal = BenchAnswer.Of(new LotRejected("P-5"));
        Assert.Equal(("refusal", 0), (refusal.Kind, refusal.Answers!.Count));
    }
}
