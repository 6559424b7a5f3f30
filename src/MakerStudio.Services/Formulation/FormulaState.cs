namespace MakerStudio.Services.Formulation;

/// <summary>A draft may change; a released version is frozen for good.</summary>
public enum FormulaState { Draft, Released }
