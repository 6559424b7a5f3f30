using System.Diagnostics.CodeAnalysis;
using MakerStudio.Core.Quantities;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Shell.Fields;

public partial class QuantityField
{
    private string? _typed;
    private string? _why;
    private string? _told;
    private decimal? _given;
    private QuantityReading.Asks? _asks;
    private ValidationMessageStore? _messages;

    /// <summary>Set when the field may take the typed unit as its own, as on an invoice line; otherwise typing another unit converts.</summary>
    [Parameter] public EventCallback<string> UnitChanged { get; set; }

    /// <summary>Units the field may change to; null means every unit of amount.</summary>
    [Parameter] public IReadOnlyList<string>? Units { get; set; }

    /// <summary>Lets a volume be typed where the field shows a mass, and the other way round.</summary>
    [Parameter] public Density? Density { get; set; }

    [Parameter] public int MaxDecimals { get; set; } = 3;
    [Parameter] public bool AllowNegative { get; set; }
    [Parameter] public bool AllowZero { get; set; } = true;

    protected override IEnumerable<string> Errors =>
        EditContext is null ? (_why is null ? [] : [_why]) : base.Errors;

    private string Shown => _onScreen ?? _typed ?? QuantityReadout.Plain(CurrentValue);

    protected override void OnParametersSet()
    {
        if (_typed is not null && CurrentValue != _given)
        {
            Settle();
        }
    }

    private async Task TakeAsync(string? text)
    {
        Settle();
        if (string.IsNullOrWhiteSpace(text))
        {
            Give(null);
            return;
        }

        switch (Reading(text))
        {
            case QuantityReading.Read read:
                await UseAsync(read, text);
                break;
            case QuantityReading.Asks asks:
                _asks = asks;
                Refuse(text, asks.Question);
                break;
            case QuantityReading.Unreadable unreadable:
                Refuse(text, unreadable.Why);
                break;
        }
    }

    private QuantityReading Reading(string text) =>
        QuantityText.Parse(text, new QuantityTextOptions(QuantityReadout.DecimalMark, Unit, MaxDecimals, AllowNegative, AllowZero));

    private async Task UseAsync(QuantityReading.Read read, string text)
    {
        if (read.Unit is null || read.Unit == Unit)
        {
            _told = read.Interpretation;
            Give(read.Value);
            return;
        }

        if (UnitChanged.HasDelegate && (Units?.Contains(read.Unit) ?? read.AmountUnit is not null))
        {
            _told = read.Interpretation;
            Give(read.Value);
            await UnitChanged.InvokeAsync(read.Unit);
            return;
        }

        var converted = UnitSwap.Into(read.Value, read.AmountUnit, AmountUnits.Parse(Unit), Density);
        if (converted is { } value && decimal.Round(value, MaxDecimals) == value)
        {
            _told = $"{QuantityReadout.Plain(read.Value)} {read.Unit} = {QuantityReadout.Plain(value)} {Unit}";
            Give(value);
        }
        else if (converted is { } long_)
        {
            var near = decimal.Round(long_, MaxDecimals, MidpointRounding.AwayFromZero);
            Refuse(text, $"{read.Unit} does not come out even here; {QuantityReadout.Plain(near)} {Unit} is nearest. Type it if you mean it.");
        }
        else
        {
            Refuse(text, UnitSwap.WhyNot(read.Unit, Unit));
        }
    }

    private void Refuse(string text, string why)
    {
        _typed = text;
        _why = why;
        if (EditContext is not null)
        {
            _messages ??= new ValidationMessageStore(EditContext);
            _messages.Add(FieldIdentifier, why);
        }

        Give(null);
    }

    private void Give(decimal? value)
    {
        _given = value;
        CurrentValue = value;
        EditContext?.NotifyValidationStateChanged();
    }

    private void Settle()
    {
        _typed = _why = _told = null;
        _asks = null;
        _messages?.Clear();
    }

    protected override bool TryParseValueFromString(string? value, out decimal? result, [NotNullWhen(false)] out string? validationErrorMessage) =>
        throw new NotSupportedException("The field reads its text through QuantityText.");

    protected override void Dispose(bool disposing)
    {
        _timer?.Dispose();
        _messages?.Clear();
        base.Dispose(disposing);
    }
}
