using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>An svg text. Razor keeps the tag of that name for itself, so a drawing writes its words with this.</summary>
public sealed class Words : ComponentBase
{
    [Parameter(CaptureUnmatchedValues = true)] public IReadOnlyDictionary<string, object>? More { get; set; }
    [Parameter] public RenderFragment? ChildContent { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddMultipleAttributes(1, More);
        builder.AddContent(2, ChildContent);
        builder.CloseElement();
    }
}
