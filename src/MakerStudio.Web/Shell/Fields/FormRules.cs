using System.Collections;
using FluentValidation;
using FluentValidation.Results;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Shell.Fields;

/// <summary>
/// Puts a FluentValidation validator into an EditForm: everything on submit, one field as it is left. Rules here look
/// at shape and range and are synchronous; what only the database knows is an outcome of the command.
/// </summary>
public sealed class FormRules : ComponentBase, IDisposable
{
    private ValidationMessageStore _messages = default!;

    [CascadingParameter] private EditContext Form { get; set; } = default!;

    [Parameter, EditorRequired] public IValidator Rules { get; set; } = default!;

    /// <summary>Builds what the rules judge, when that is not the form's own model. Names must match the model's.</summary>
    [Parameter] public Func<object>? Request { get; set; }

    protected override void OnInitialized()
    {
        if (Form is null)
        {
            throw new InvalidOperationException("FormRules stands inside an EditForm.");
        }

        _messages = new ValidationMessageStore(Form);
        Form.OnValidationRequested += CheckAll;
        Form.OnFieldChanged += CheckOne;
    }

    private void CheckAll(object? sender, ValidationRequestedEventArgs args)
    {
        _messages.Clear();
        foreach (var (field, message) in Judge())
        {
            _messages.Add(field, message);
        }

        Form.NotifyValidationStateChanged();
    }

    private void CheckOne(object? sender, FieldChangedEventArgs args)
    {
        _messages.Clear(args.FieldIdentifier);
        foreach (var (_, message) in Judge().Where(m => m.Field.Equals(args.FieldIdentifier)))
        {
            _messages.Add(args.FieldIdentifier, message);
        }

        Form.NotifyValidationStateChanged();
    }

    private List<(FieldIdentifier Field, string Message)> Judge()
    {
        var judged = Request?.Invoke() ?? Form.Model;
        ValidationResult result = Rules.Validate(new ValidationContext<object>(judged));
        return [.. result.Errors.Select(e => (Find(Form.Model, e.PropertyName), e.ErrorMessage))];
    }

    /// <summary>"Lines[2].Amount" on the model becomes the field Amount of the third line.</summary>
    internal static FieldIdentifier Find(object model, string path)
    {
        var owner = model;
        var steps = path.Split('.');
        foreach (var step in steps[..^1])
        {
            if (Step(owner, step) is not { } next)
            {
                return new FieldIdentifier(model, path);
            }

            owner = next;
        }

        return new FieldIdentifier(owner, steps[^1]);
    }

    private static object? Step(object owner, string step)
    {
        var bracket = step.IndexOf('[', StringComparison.Ordinal);
        var name = bracket < 0 ? step : step[..bracket];
        var value = owner.GetType().GetProperty(name)?.GetValue(owner);
        if (bracket < 0 || value is not IList list || !int.TryParse(step[(bracket + 1)..^1], out var index))
        {
            return bracket < 0 ? value : null;
        }

        return index < list.Count ? list[index] : null;
    }

    public void Dispose()
    {
        if (Form is not null)
        {
            Form.OnValidationRequested -= CheckAll;
            Form.OnFieldChanged -= CheckOne;
        }
    }
}
