using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Shell.Fields;

/// <summary>
/// What all fields share: a label on the mouth, a hint and the errors under the foot, tied together for screen
/// readers. Works in an EditForm, in a plain posted form, and alone.
/// </summary>
public abstract class VesselInput<T> : InputBase<T>
{
    private readonly string _id = Ids.Next("f");

    [Parameter, EditorRequired] public string Label { get; set; } = "";

    /// <summary>For a field inside a table, where the head of the column says it.</summary>
    [Parameter] public bool LabelHidden { get; set; }

    [Parameter] public string? Hint { get; set; }
    [Parameter] public string? Unit { get; set; }
    [Parameter] public bool Small { get; set; }
    [Parameter] public bool Disabled { get; set; }

    /// <summary>The field's id; an id given as an attribute wins, so other text can point at it.</summary>
    public string Id => AdditionalAttributes?.GetValueOrDefault("id") as string ?? _id;

    protected virtual IEnumerable<string> Errors => EditContext?.GetValidationMessages(FieldIdentifier) ?? [];

    protected string? DescribedBy => Errors.Any() ? Id + "-err" : Hint is null ? null : Id + "-hint";

    protected string? Invalid => Errors.Any() ? "true" : null;
}
