namespace MakerStudio.Web.Shell.Parts;

/// <summary>Warn never blocks; Bad is a refusal and says what would lift it.</summary>
public enum NoteKind
{
    Info, Warn, Bad, Ok,
}
