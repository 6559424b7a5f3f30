using FluentValidation;
using MakerStudio.Core.Labels;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>Labels that lie in the drawer.</summary>
/// <param name="OffsetAcross">What the studio's printer needs, mm; a print starts from it.</param>
public sealed record LabelStockItem(Guid Id, string Name, LabelStock Stock, decimal OffsetAcross, decimal OffsetDown);

/// <summary>Puts labels into the drawer. Millimetres.</summary>
public sealed record AddLabelStock : StudioRequest
{
    public string Name { get; set; } = "";
    public decimal? Width { get; set; }
    public decimal? Height { get; set; }

    /// <summary>False for a roll: every label is a page of its own.</summary>
    public bool OnSheets { get; set; } = true;
    public decimal? PageWidth { get; set; } = 210m;
    public decimal? PageHeight { get; set; } = 297m;
    public decimal? Columns { get; set; }
    public decimal? Rows { get; set; }
    public decimal? PitchAcross { get; set; }
    public decimal? PitchDown { get; set; }
    public decimal? MarginLeft { get; set; }
    public decimal? MarginTop { get; set; }

    /// <summary>Null while a measure is still empty.</summary>
    public LabelStock? ToStock() => (Width, Height) is not ({ } width, { } height) ? null
        : !OnSheets ? new(width, height, null)
        : (PageWidth, PageHeight, Columns, Rows, MarginLeft, MarginTop) is ({ } pageWidth, { } pageHeight, { } columns, { } rows, { } left, { } top)
            ? new(width, height, new(pageWidth, pageHeight, (int)decimal.Clamp(columns, 0, 1000), (int)decimal.Clamp(rows, 0, 1000), PitchAcross ?? width, PitchDown ?? height, left, top))
            : null;
}

public sealed class AddLabelStockValidator : AbstractValidator<AddLabelStock>
{
    public AddLabelStockValidator()
    {
        RuleFor(r => r.Name).OneLine("The name", 80);
        RuleFor(r => r.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("These labels need a name, such as 60 × 80 mm, 9 on A4.");
        RuleFor(r => r.Width).NotNull().WithMessage("Give the width of one label.");
        RuleFor(r => r.Height).NotNull().WithMessage("Give the height of one label.");
        When(r => r.OnSheets, () =>
        {
            RuleFor(r => r.PageWidth).NotNull().WithMessage("Give the width of the page.");
            RuleFor(r => r.PageHeight).NotNull().WithMessage("Give the height of the page.");
            RuleFor(r => r.Columns).NotNull().WithMessage("Give how many labels stand side by side.");
            RuleFor(r => r.Rows).NotNull().WithMessage("Give how many rows there are.");
            RuleFor(r => r.MarginLeft).NotNull().WithMessage("Give the white at the left of the first label.");
            RuleFor(r => r.MarginTop).NotNull().WithMessage("Give the white above the first label.");
        });
        RuleFor(r => r.Width).Custom((_, context) =>
        {
            foreach (var problem in context.InstanceToValidate.ToStock()?.Problems() ?? [])
            {
                context.AddFailure(problem);
            }
        });
    }
}

/// <summary>Takes labels out of the drawer; what was printed on them keeps its record.</summary>
public sealed record RetireLabelStock : StudioRequest
{
    public Guid StockId { get; set; }
}

/// <summary>The labels the studio prints on.</summary>
public sealed class LabelStocks(StudioStore store)
{
    private static readonly AddLabelStockValidator AddShape = new();

    /// <summary>Those in the drawer, by name.</summary>
    public async Task<IReadOnlyList<LabelStockItem>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await ListAsync(db, cancel);
    }

    public Task<Outcome<Nothing>> AddAsync(Actor actor, AddLabelStock request, CancellationToken cancel = default) =>
        store.RunAsync<AddLabelStock, Nothing>(actor, request, AddShape, async command =>
        {
            var name = request.Name.Trim();
            if (await command.Db.LabelStocks.AnyAsync(s => s.RetiredAt == null && s.Name.ToLower() == name.ToLower(), cancel))
            {
                return new Because($"There are labels called {name} already.", "Give these another name, or take those out of the drawer first.");
            }

            var row = RowOf(name, request.ToStock()!);
            command.Db.LabelStocks.Add(row);
            command.Record("label stock", row.Id, $"Put {name} into the label drawer", Topics.Finished);
            return Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> RetireAsync(Actor actor, RetireLabelStock request, CancellationToken cancel = default) =>
        store.RunAsync<RetireLabelStock, Nothing>(actor, request, null, async command =>
        {
            if (await command.Db.LabelStocks.SingleOrDefaultAsync(s => s.Id == request.StockId, cancel) is not { } row)
            {
                return new NotFound("This label stock");
            }

            row.RetiredAt ??= command.Now;
            command.Record("label stock", row.Id, $"Took {row.Name} out of the label drawer", Topics.Finished);
            return Nothing.Value;
        }, cancel: cancel);

    internal static async Task<IReadOnlyList<LabelStockItem>> ListAsync(StudioDb db, CancellationToken cancel) =>
        [.. (await db.LabelStocks.Where(s => s.RetiredAt == null).OrderBy(s => s.Name).ThenBy(s => s.Id).ToListAsync(cancel)).Select(ItemOf)];

    internal static LabelStockItem ItemOf(LabelStockRow row) => new(
        row.Id, row.Name,
        new(row.Width, row.Height, row.PageWidth is { } pageWidth
            ? new(pageWidth, row.PageHeight!.Value, row.Columns!.Value, row.Rows!.Value, row.PitchAcross!.Value, row.PitchDown!.Value, row.MarginLeft!.Value, row.MarginTop!.Value)
            : null),
        row.OffsetAcross, row.OffsetDown);

    private static LabelStockRow RowOf(string name, LabelStock stock) => new()
    {
        Name = name, Width = stock.Width, Height = stock.Height, PageWidth = stock.Sheet?.PageWidth, PageHeight = stock.Sheet?.PageHeight,
        Columns = stock.Sheet?.Columns, Rows = stock.Sheet?.Rows, PitchAcross = stock.Sheet?.PitchAcross, PitchDown = stock.Sheet?.PitchDown,
        MarginLeft = stock.Sheet?.MarginLeft, MarginTop = stock.Sheet?.MarginTop,
    };
}
