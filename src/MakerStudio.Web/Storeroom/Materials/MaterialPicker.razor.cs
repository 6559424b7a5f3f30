using System.Diagnostics.CodeAnalysis;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace MakerStudio.Web.Storeroom;

public partial class MaterialPicker
{
    private const int Suggested = 12;
    private readonly string _listId = Ids.Next("pick");
    private IReadOnlyList<MaterialRow> _found = [];
    private MaterialRow? _chosen;
    private string? _text;
    private string? _why;
    private bool _open;
    private int _active = -1;
    private int _asked;

    [Inject] private Materials Materials { get; set; } = default!;

    /// <summary>Only these kinds; null takes all.</summary>
    [Parameter] public IReadOnlyCollection<MaterialKind>? Kinds { get; set; }

    /// <summary>Only what is stocked so; null takes both.</summary>
    [Parameter] public StockUnit? StockedIn { get; set; }

    /// <summary>Gives the whole row with its unit and density, or null when the field was emptied.</summary>
    [Parameter] public EventCallback<MaterialRow?> Chosen { get; set; }

    protected override IEnumerable<string> Errors => _why is null ? base.Errors : [_why];

    private string? ActiveId => _open && _active >= 0 ? OptionId(_active) : null;

    private string OptionId(int index) => $"{_listId}-{index}";

    protected override async Task OnParametersSetAsync()
    {
        if (CurrentValue == _chosen?.Id || (CurrentValue is null && _why is not null))
        {
            return;
        }

        _chosen = CurrentValue is { } id ? await Materials.RowAsync(id) : null;
        _text = _chosen?.Name;
        _why = null;
    }

    private async Task TypeAsync(string? text)
    {
        _text = text;
        _why = null;
        var turn = ++_asked;
        var found = await Materials.SuggestAsync(new MaterialSearch { Text = text, Kinds = Kinds, StockedIn = StockedIn, Take = Suggested });
        if (turn != _asked)
        {
            return; // more was typed meanwhile
        }

        _found = found;
        _open = true;
        _active = found.Count > 0 && !string.IsNullOrWhiteSpace(text) ? 0 : -1;
    }

    private async Task KeyAsync(KeyboardEventArgs key)
    {
        switch (key.Key)
        {
            case "ArrowDown" or "ArrowUp" when !_open:
                await TypeAsync(_text == _chosen?.Name ? "" : _text);
                break;
            case "ArrowDown":
                _active = _found.Count == 0 ? -1 : (_active + 1) % _found.Count;
                break;
            case "ArrowUp":
                _active = _found.Count == 0 ? -1 : (_active <= 0 ? _found.Count : _active) - 1;
                break;
            case "Enter" when _open && _active >= 0:
                await ChooseAsync(_found[_active]);
                break;
            case "Escape" when _open:
                _text = _chosen?.Name;
                Close();
                break;
        }
    }

    private Task ChooseAsync(MaterialRow row) => GiveAsync(row, row.Name, null);

    /// <summary>An emptied field means none; a name typed in full means that material; other text is said to name none.</summary>
    private async Task LeaveAsync()
    {
        if (_text == _chosen?.Name || (_why is not null && !_open))
        {
            Close();
            return;
        }

        if (string.IsNullOrWhiteSpace(_text))
        {
            await GiveAsync(null, null, null);
            return;
        }

        var typed = _text.Trim();
        var found = await Materials.SuggestAsync(new MaterialSearch { Text = typed, Kinds = Kinds, StockedIn = StockedIn, Take = Suggested });
        var named = found.FirstOrDefault(m => m.Name.Equals(typed, StringComparison.OrdinalIgnoreCase)) ?? (found.Count == 1 ? found[0] : null);
        await (named is null
            ? GiveAsync(null, _text, "No material is chosen yet. Choose one from the list that opens as you type.")
            : ChooseAsync(named));
    }

    private async Task GiveAsync(MaterialRow? row, string? text, string? why)
    {
        Close();
        (_chosen, _text, _why) = (row, text, why);
        CurrentValue = row?.Id;
        await Chosen.InvokeAsync(row);
    }

    private void Close()
    {
        _asked++;
        _open = false;
        _active = -1;
    }

    protected override bool TryParseValueFromString(string? value, out Guid? result, [NotNullWhen(false)] out string? validationErrorMessage) =>
        throw new NotSupportedException("A material is chosen, not parsed.");
}
