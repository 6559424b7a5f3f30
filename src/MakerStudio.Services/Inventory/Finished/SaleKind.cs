namespace MakerStudio.Services.Inventory;

public enum SaleKind
{
    Sale,

    /// <summary>Units that came back from a buyer, with what was paid back.</summary>
    Return,

    /// <summary>A wrong entry taken back as a whole.</summary>
    Reversal,
}
