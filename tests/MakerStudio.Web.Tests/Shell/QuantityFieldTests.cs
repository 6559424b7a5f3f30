using System.Globalization;
using Bunit;
using MakerStudio.Core.Quantities;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Tests.Shell;

public sealed class QuantityFieldTests : ShellContext
{
    private decimal? _value;

    private IRenderedComponent<QuantityField> Field(string? unit = "g", Density? density = null, int decimals = 3) =>
        Render<QuantityField>(p => p.Add(f => f.Label, "On the scale").Add(f => f.Unit, unit).Add(f => f.Density, density)
            .Add(f => f.MaxDecimals, decimals).Bind(f => f.Value, _value, v => _value = v));

    [Theory]
    [InlineData("199.6", "199.6")]
    [InlineData("199,6", "199.6")]
    [InlineData("3 320", "3320")]
    [InlineData("3.32 kg", "3320")]
    [InlineData("500 mg", "0.5")]
    [InlineData(" 12 ", "12")]
    public void Typed_AnyClearQuantity_ComesOutInTheShownUnit(string typed, string expected)
    {
        var field = Field();

        field.Find("input").Change(typed);

        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), _value);
        Assert.Empty(field.FindAll(".err"));
    }

    [Theory]
    [InlineData("twelve")]
    [InlineData("12..5")]
    [InlineData("NaN")]
    [InlineData("1e3")]
    [InlineData("-4")]
    [InlineData("0.0001")]
    [InlineData("5 mL")]
    [InlineData("2 each")]
    public void Typed_WhatCannotBeUsed_KeepsTheTextSaysWhyAndGivesNoValue(string typed)
    {
        _value = 480m;
        var field = Field();

        field.Find("input").Change(typed);

        Assert.Equal(typed, field.Find("input").GetAttribute("value"));
        Assert.Null(_value);
        var error = field.Find(".err");
        Assert.NotEmpty(error.TextContent.Trim());
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        Assert.Equal(error.ParentElement!.Id, field.Find("input").GetAttribute("aria-describedby"));
    }

    [Fact]
    public void Typed_BareOunce_IsAskedAboutAndTheAnswerConverts()
    {
        var field = Field(decimals: 9);

        field.Find("input").Change("2 oz");
        Assert.Null(_value);
        Assert.Equal(["2 oz (weight)", "2 fl oz (US)", "2 fl oz (imp)"], field.FindAll(".ask button").Select(b => b.TextContent.Trim()));

        field.FindAll(".ask button")[0].Click();
        Assert.Equal(56.69904625m, _value);
        Assert.Empty(field.FindAll(".ask"));
    }

    [Fact]
    public void Typed_ConversionLongerThanKept_IsNotRoundedSilently()
    {
        var field = Field(decimals: 1);

        field.Find("input").Change("1 lb");

        Assert.Null(_value);
        Assert.Contains("453.6 g is nearest", field.Find(".err").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Typed_VolumeWithDensity_BecomesMass()
    {
        var field = Field(density: Density.FromGramsPerMillilitre(0.79m));

        field.Find("input").Change("25 L");

        Assert.Equal(19750m, _value);
        Assert.Equal("25 L = 19750 g", field.Find(".hint").TextContent);
    }

    [Fact]
    public void Typed_AnotherUnitWhereTheFieldMayChange_ChangesTheUnitNotTheNumber()
    {
        var unit = "kg";
        var field = Render<QuantityField>(p => p.Add(f => f.Label, "As invoiced").Bind(f => f.Unit, unit, u => unit = u!)
            .Bind(f => f.Value, _value, v => _value = v));

        field.Find("input").Change("25 L");

        Assert.Equal(25m, _value);
        Assert.Equal("L", unit);
    }

    [Fact]
    public void Shown_DecimalComma_IsTheReadersMark()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            _value = 199.60m;

            Assert.Equal("199,60", Field().Find("input").GetAttribute("value"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Input_IsPlainText_SoNoWheelOrArrowAltersIt()
    {
        var input = Field().Find("input");

        Assert.Equal("text", input.GetAttribute("type"));
        Assert.Equal("decimal", input.GetAttribute("inputmode"));
    }

    [Fact]
    public void Typed_UnreadableInsideAForm_KeepsTheFormFromBeingSent()
    {
        var model = new Line();
        var form = new EditContext(model);
        var field = Render<QuantityField>(p => p.AddCascadingValue(form).Add(f => f.Label, "x").Add(f => f.Unit, "g")
            .Bind(f => f.Value, model.Amount, v => model.Amount = v, () => model.Amount));

        field.Find("input").Change("abc");
        Assert.False(form.Validate());

        field.Find("input").Change("12");
        Assert.True(form.Validate());
        Assert.Equal(12m, model.Amount);
    }

    [Fact]
    public void Live_TypedText_CountsAfterAShortRestAndIsNeverRewritten()
    {
        _value = 12m;
        var field = Live();

        field.Find("input").Input("11,");
        Clock.Advance(TimeSpan.FromMilliseconds(299));
        field.Find("input").Input("11,70");
        Clock.Advance(TimeSpan.FromMilliseconds(299));
        Assert.Equal(12m, _value);

        Clock.Advance(TimeSpan.FromMilliseconds(1));
        field.WaitForAssertion(() => Assert.Equal(11.7m, _value));
        // What the page wrote last stands unchanged in the tree, so nothing is sent over the caret.
        Assert.Equal("12", field.Find("input").GetAttribute("value"));

        field.Find("input").Blur();
        Assert.Equal("11.7", field.Find("input").GetAttribute("value"));
    }

    [Theory]
    [InlineData("11,7x")]
    [InlineData("5 lb")]
    [InlineData("")]
    public void Live_WhatIsPerhapsHalfway_KeepsTheLastAmountUntilAPause(string typed)
    {
        _value = 12m;
        var field = Live();

        field.Find("input").Input(typed);
        Clock.Advance(TimeSpan.FromMilliseconds(300));
        Clock.Advance(TimeSpan.FromMilliseconds(1199));
        Assert.Equal(12m, _value);
        Assert.Empty(field.FindAll(".err"));

        Clock.Advance(TimeSpan.FromMilliseconds(1));
        field.WaitForAssertion(() => Assert.NotEqual(12m, _value));
        Assert.Equal("12", field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public void Live_LeftBeforeThePause_SaysAtOnceWhatCannotBeRead()
    {
        var field = Live();
        field.Find("input").Input("twelve");
        field.Find("input").Change("twelve");
        field.Find("input").Blur();

        Assert.Single(field.FindAll(".err"));
        Assert.Equal("twelve", field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public void NotLive_Typing_ChangesNothingBeforeItIsLeft()
    {
        var field = Field();
        Assert.Throws<Bunit.MissingEventHandlerException>(() => field.Find("input").Input("5"));
        Assert.Null(_value);
    }

    private IRenderedComponent<QuantityField> Live() =>
        Render<QuantityField>(p => p.Add(f => f.Label, "Fig").Add(f => f.Live, true).Add(f => f.Unit, "g").Add(f => f.MaxDecimals, 6).Bind(f => f.Value, _value, v => _value = v));

    private sealed class Line
    {
        public decimal? Amount { get; set; }
    }
}
