using FluentValidation;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Labels;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>Keeps the words of a label; with <see cref="Confirms"/> the acting person also confirms all of it.</summary>
public sealed record KeepLabel : StudioRequest
{
    public Guid FormulaVersionId { get; set; }
    public Guid FormulaSizeId { get; set; }
    public Guid? StockId { get; set; }

    /// <summary>What the buyer calls it; empty takes the kind's own word.</summary>
    public string? ProductLine { get; set; }

    /// <summary>The maker's own, a line each.</summary>
    public string? OwnLines { get; set; }
    public string? Disposal { get; set; } = LabelWording.UsualDisposal;
    public bool UsesSmallPackRelief { get; set; }
    public bool ShowsEMark { get; set; }
    public bool NeedsNoUfi { get; set; }
    public string? Ufi { get; set; }

    /// <summary>Display panel in the US, cm²; null takes the label's own area.</summary>
    public decimal? PanelSquareCentimetres { get; set; }
    public bool Confirms { get; set; }

    /// <summary>Mark of the content that was on screen.</summary>
    public string? Seen { get; set; }

    /// <summary>The version the form was opened with; 0 for a new label.</summary>
    public uint Version { get; set; }

    public LabelWording ToWording()
    {
        const double squareMillimetresPerSquareCentimetre = 100;
        return new(
            string.IsNullOrWhiteSpace(ProductLine) ? null : ProductLine.Trim(),
            [.. (OwnLines ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)],
            (Disposal ?? "").Trim(), UsesSmallPackRelief, ShowsEMark, NeedsNoUfi, (double?)PanelSquareCentimetres * squareMillimetresPerSquareCentimetre);
    }
}

public sealed class KeepLabelValidator : AbstractValidator<KeepLabel>
{
    /// <summary>cm²; own bound.</summary>
    private const decimal LargestPanel = 10_000m;

    public KeepLabelValidator()
    {
        RuleFor(r => r.ProductLine).OneLine("What the buyer calls it", 60);
        RuleFor(r => r.OwnLines).SeveralLines("Your own lines", 500);
        RuleFor(r => r.Disposal).OneLine("Where the empty pack goes", 120);
        RuleFor(r => r.PanelSquareCentimetres).Must(p => p is null or (> 0 and <= LargestPanel)).WithMessage("The display panel is above 0 and up to 10,000 cm².");
        RuleFor(r => r.Ufi).Custom((typed, context) =>
        {
            if (!string.IsNullOrWhiteSpace(typed) && !UfiCode.TryParse(typed, out _, out var why))
            {
                context.AddFailure(why);
            }
        });
    }
}

/// <summary>Something the law asks for is not on the label yet.</summary>
public sealed record LabelIncomplete(IReadOnlyList<string> Missing) : Refusal
{
    public override string Happened => $"Not on the label yet: {string.Join(", ", Missing)}.";
    public override string ToDo => "The list beside the label says what to do about each.";
}

/// <summary>The words need more room than the label has.</summary>
public sealed record LabelTooSmall(IReadOnlyList<string> Problems, IReadOnlyList<string> WaysOut) : Refusal
{
    public override string Happened => string.Join(' ', Problems);
    public override string ToDo => string.Join(' ', WaysOut);
}

/// <summary>What the materials or the settings say changed between looking and confirming.</summary>
public sealed record LabelChangedMeanwhile : Refusal
{
    public override string Happened => "What the label says changed while you had it open: a material's sheet, the studio's address, or where it sells.";
    public override string ToDo => "Look at it as it is now, then confirm.";
}

public sealed record LabelKept(Guid LabelId, bool IsConfirmed);

public sealed partial class FormulaLabels
{
    private static readonly KeepLabelValidator KeepShape = new();

    public Task<Outcome<LabelKept>> KeepAsync(Actor actor, KeepLabel request, CancellationToken cancel = default) =>
        store.RunAsync<KeepLabel, LabelKept>(actor, request, KeepShape, async command =>
        {
            var version = await VersionAsync(command.Db, request.FormulaVersionId, cancel);
            var size = await command.Db.FormulaSizes.SingleOrDefaultAsync(s => s.Id == request.FormulaSizeId, cancel);
            if (version is null || size?.FormulaId != version.FormulaId)
            {
                return new NotFound("This version or size");
            }

            var row = await command.Db.Labels.SingleOrDefaultAsync(l => l.FormulaVersionId == version.Id && l.FormulaSizeId == size.Id, cancel);
            if (row is null != (request.Version == 0))
            {
                return new Stale("this label", "Somebody");
            }

            row ??= command.Db.Labels.Add(new LabelRow { FormulaVersionId = version.Id, FormulaSizeId = size.Id, Wording = "{}" }).Entity;
            if (request.Version != 0)
            {
                command.ExpectVersion(row, request.Version);
            }

            Write(row, request, command);
            var said = $"{version.Formula!.Name} v{version.Number}, {size.Name}";
            if (request.Confirms && await ConfirmAsync(command, row, version, size, request, cancel) is { } refusal)
            {
                return refusal;
            }

            command.Record("label", row.Id, request.Confirms ? $"Confirmed the label of {said}" : $"Kept the words of the label of {said}", Topics.Finished);
            return await command.TrySaveAsync() ? new LabelKept(row.Id, request.Confirms) : new Stale("this label", "Somebody");
        }, cancel: cancel);

    private static void Write(LabelRow row, KeepLabel request, Command command)
    {
        row.Wording = LabelJson.Write(request.ToWording());
        row.Ufi = UfiCode.TryParse(request.Ufi, out var code, out _) ? code.Text : null;
        row.LabelStockId = request.StockId;
        (row.KeptById, row.KeptAt) = (command.PersonId, command.Now);
    }

    private static async Task<Refusal?> ConfirmAsync(
        Command command, LabelRow row, FormulaVersion version, FormulaSize size, KeepLabel request, CancellationToken cancel)
    {
        var stock = await command.Db.LabelStocks.SingleOrDefaultAsync(s => s.Id == request.StockId && s.RetiredAt == null, cancel);
        if (stock is null)
        {
            return new Because("No labels are chosen for it.", "Choose which labels it is printed on.");
        }

        var net = NetOf(size.NominalMillilitres, size.NominalMilligrams)!;
        var facts = await LabelAssessment.FactsAsync(command.Db, version, net, request.ToWording(), row.Ufi, command.Today, cancel);
        if (MarkOf(facts) != request.Seen)
        {
            return new LabelChangedMeanwhile();
        }

        // A batch's own lines stand in for measuring: the longest code a series reaches is a few letters longer than the first.
        var layout = LabelPress.LayOut(facts with { Batch = SampleBatch }, LabelStocks.ItemOf(stock).Stock);
        if (layout.Content.Missing is { Count: > 0 } missing)
        {
            return new LabelIncomplete([.. missing.Select(element => element.Title)]);
        }

        if (!layout.Fits)
        {
            return new LabelTooSmall(layout.Problems, layout.WaysOut);
        }

        (row.Confirmed, row.ConfirmedById, row.ConfirmedAt) = (LabelJson.Write(facts), command.PersonId, command.Now);
        return null;
    }

    /// <summary>Takes the room of any batch: for trying a label before there is one.</summary>
    public static LabelBatch SampleBatch { get; } = new("XX-000", new DateOnly(2027, 12, 31), "https://studio.example/finished/XX-000");
}
