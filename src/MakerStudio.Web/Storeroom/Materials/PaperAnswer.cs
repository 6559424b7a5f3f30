namespace MakerStudio.Web.Storeroom;

/// <summary>What the upload answers, in the three parts of a refusal.</summary>
public sealed record PaperAnswer(bool Done, string Happened, string Kept = "", string ToDo = "");
