using Bunit;
using FluentValidation;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Tests.Shell;

public sealed class FormRulesTests : ShellContext
{
    [Fact]
    public void Submit_LineInAList_PutsTheMessageOnThatLinesField()
    {
        var delivery = new Delivery { Supplier = "Alder Supply", Lines = [new() { Amount = 5 }, new()] };
        var form = Form(delivery);

        Assert.False(form.Validate());
        Assert.Equal(["Type how much came."], form.GetValidationMessages(new FieldIdentifier(delivery.Lines[1], nameof(Line.Amount))));
        Assert.Empty(form.GetValidationMessages(new FieldIdentifier(delivery.Lines[0], nameof(Line.Amount))));
    }

    [Fact]
    public void LeavingAField_ShowsItsOwnMessageAndNoOther()
    {
        var delivery = new Delivery { Lines = [new()] };
        var form = Form(delivery);

        form.NotifyFieldChanged(form.Field(nameof(Delivery.Supplier)));

        Assert.Equal(["Choose who sent it."], form.GetValidationMessages());
    }

    [Fact]
    public void Submit_Mended_ClearsTheMessages()
    {
        var delivery = new Delivery { Lines = [new() { Amount = 1 }] };
        var form = Form(delivery);
        Assert.False(form.Validate());

        delivery.Supplier = "Alder Supply";

        Assert.True(form.Validate());
    }

    private EditContext Form(Delivery delivery)
    {
        var form = new EditContext(delivery);
        Render<FormRules>(p => p.AddCascadingValue(form).Add(r => r.Rules, new DeliveryRules()));
        return form;
    }

    private sealed class Delivery
    {
        public string? Supplier { get; set; }
        public List<Line> Lines { get; set; } = [];
    }

    private sealed class Line
    {
        public decimal? Amount { get; set; }
    }

    private sealed class DeliveryRules : AbstractValidator<Delivery>
    {
        public DeliveryRules()
        {
            RuleFor(d => d.Supplier).NotEmpty().WithMessage("Choose who sent it.");
            RuleForEach(d => d.Lines).ChildRules(l => l.RuleFor(x => x.Amount).NotNull().WithMessage("Type how much came."));
        }
    }
}
