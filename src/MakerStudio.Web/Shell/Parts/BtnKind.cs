namespace MakerStudio.Web.Shell.Parts;

/// <summary>Main is the one filled act of a place; Quiet leaves; Danger holds, rejects or scraps.</summary>
public enum BtnKind
{
    Outlined, Main, Quiet, Danger,
}
