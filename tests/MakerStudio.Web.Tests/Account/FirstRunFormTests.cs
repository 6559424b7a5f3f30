using MakerStudio.Web.Account;

namespace MakerStudio.Web.Tests.Account;

public sealed class FirstRunFormTests
{
    [Fact]
    public void Read_Fresh_HasOneScaleAndNoProblem()
    {
        var form = FirstRunForm.Fresh();
        form.TidyScales();
        var problems = new FormProblems();

        var request = form.Read("token", problems);

        Assert.False(problems.Any);
        var scale = Assert.Single(request.Scales);
        Assert.Equal(("Scale 1", 5_000_000L, 100L), (scale.Name, scale.CapacityMilligrams, scale.ReadabilityMilligrams));
        Assert.Equal((18m, 0.5m, 2), (request.LabourRatePerHour, request.TolerancePercent, request.ToleranceDivisions));
    }

    [Fact]
    public void Read_WhatCannotBeRead_IsNamedAtItsFieldAndTheTextStays()
    {
        var form = FirstRunForm.Fresh();
        form.LabourRatePerHour = "plenty";
        form.ToleranceDivisions = "2.5";
        form.TolerancePercent = "0.5 g";
        form.Scales = [new() { CapacityMilligrams = "5 oz", ReadabilityMilligrams = "5 mL" }];
        form.TidyScales();
        var problems = new FormProblems();

        form.Read("token", problems);

        string[] fields = ["LabourRatePerHour", "ToleranceDivisions", "TolerancePercent", "Scales[0].CapacityMilligrams", "Scales[0].ReadabilityMilligrams"];
        Assert.All(fields, field => Assert.Single(problems.At($"Form.{field}")));
        Assert.Equal("plenty", form.LabourRatePerHour);
    }

    [Fact]
    public void TidyScales_EmptyRowBeforeAFilledOne_FilledOneComesFirst()
    {
        var form = new FirstRunForm { Scales = [new(), new() { Name = "Small", CapacityMilligrams = "200 g", ReadabilityMilligrams = "0.01 g" }] };

        form.TidyScales();

        Assert.Equal((FirstRunForm.ScaleRows, "Small"), (form.Scales.Count, form.Scales[0].Name));
        Assert.Equal(10, Assert.Single(form.Read("token", new FormProblems()).Scales).ReadabilityMilligrams);
    }
}
