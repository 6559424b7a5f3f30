namespace MakerStudio.Web.Shell.Files;

/// <summary>What the sending of a file answers, in the three parts of a refusal.</summary>
/// <param name="FileId">Of the file that was kept; null when none was.</param>
public sealed record FileAnswer(bool Done, string Happened, string Kept = "", string ToDo = "", Guid? FileId = null);
