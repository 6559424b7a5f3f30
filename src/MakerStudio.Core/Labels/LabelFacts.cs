using MakerStudio.Core.Assessing;

namespace MakerStudio.Core.Labels;

/// <summary>Content as filled, in the unit the product is sold in.</summary>
/// <param name="Amount">Above 0: mL, or g.</param>
public sealed record NetContent(decimal Amount, bool IsVolume);

/// <summary>Who answers for the product.</summary>
/// <param name="Address">May have several lines.</param>
public sealed record LabelMaker(string Name, string? Address, string? Phone);

/// <summary>What only the batch knows; null parts are not known.</summary>
/// <param name="Address">Where the batch's record is found: what the square code says.</param>
public sealed record LabelBatch(string Code, DateOnly? BestBefore, string? Address);

/// <summary>What the maker decides about the words.</summary>
/// <param name="ProductLine">What the buyer calls it; null takes the kind's own word.</param>
/// <param name="ExtraLines">The maker's own, each in a line.</param>
/// <param name="Disposal">Where the empty pack goes: the end of P501.</param>
/// <param name="UsesSmallPackRelief">Leaves out what a pack of up to 125 mL may leave out.</param>
/// <param name="ShowsEMark">Puts ℮ behind the net quantity: the maker fills by the average system and answers for it.</param>
/// <param name="NeedsNoUfi">The maker sells where no poison-centre code is asked for.</param>
/// <param name="PanelSquareMillimetres">Area of the US display panel, above 0; null takes the label's own.</param>
public sealed record LabelWording(
    string? ProductLine,
    IReadOnlyList<string> ExtraLines,
    string Disposal,
    bool UsesSmallPackRelief,
    bool ShowsEMark,
    bool NeedsNoUfi,
    double? PanelSquareMillimetres)
{
    public const string UsualDisposal = "your local collection point";

    public bool SaysTheSame(LabelWording other) =>
        other is not null && ExtraLines.SequenceEqual(other.ExtraLines) && this with { ExtraLines = other.ExtraLines } == other;

    public static LabelWording Usual { get; } = new(null, [], UsualDisposal, false, false, false, null);
}

/// <summary>Everything a label is made from: the one input of its content. Plain values, so that it can be frozen.</summary>
/// <param name="ScentName">Name of the scent.</param>
/// <param name="ProductKind">Key of the kind in Core/Products.</param>
/// <param name="Allergens">Declared by the market's threshold, beyond what the hazard elements name.</param>
/// <param name="Batch">Null on a label that is not of a batch yet.</param>
public sealed record LabelFacts(
    string ScentName,
    string ProductKind,
    NetContent Net,
    LabelScheme Scheme,
    LabelHazards Hazards,
    IReadOnlyList<string> Allergens,
    string? Ufi,
    LabelMaker Maker,
    LabelWording Wording,
    LabelBatch? Batch)
{
    /// <summary>Capacity in mL where the content is a volume; a pack sold by weight has none known.</summary>
    public decimal? CapacityMillilitres => Net.IsVolume ? Net.Amount : null;

    public bool IsUnitedStates => Scheme == LabelScheme.UnitedStates;

    /// <summary>How it differs from what was confirmed before, each in a few words, the batch aside; empty where nothing does.</summary>
    public IReadOnlyList<string> DifferencesFrom(LabelFacts confirmed)
    {
        ArgumentNullException.ThrowIfNull(confirmed);
        (bool Differs, string What)[] others =
        [
            (ScentName != confirmed.ScentName, $"the name {confirmed.ScentName} → {ScentName}"),
            (Net != confirmed.Net, "the net quantity"),
            (Scheme != confirmed.Scheme, "where the studio sells"),
            (!Allergens.SequenceEqual(confirmed.Allergens), "the declared allergens"),
            (Ufi != confirmed.Ufi, "the poison-centre code"),
            (Maker != confirmed.Maker, "the maker's name, address or telephone"),
            (!Wording.SaysTheSame(confirmed.Wording), "your words"),
        ];
        return [.. Hazards.DifferencesFrom(confirmed.Hazards), .. others.Where(each => each.Differs).Select(each => each.What)];
    }
}
