using System.Globalization;
using System.Security.Cryptography;
using FluentValidation;
using MakerStudio.Core.Exchange;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>Keeps a file of materials, lots or formulas, so that it can be looked through and brought in later. Nothing is made yet.</summary>
public sealed record AddBroughtFile : StudioRequest
{
    /// <summary>Largest file, bytes: several times the largest that still has no more rows than are taken. Own bound.</summary>
    public const long MostBytes = 4 * 1024 * 1024;

    public BringInKind Kind { get; set; }
    public string Name { get; set; } = "";
}

public sealed class AddBroughtFileValidator : AbstractValidator<AddBroughtFile>
{
    public AddBroughtFileValidator()
    {
        RuleFor(r => r.Kind).IsInEnum().WithMessage("Choose what the file holds.");
        RuleFor(r => r.Name).OneLine("The name of the file", 200);
    }
}

public sealed record BroughtFileAdded(Guid FileId);

/// <summary>Nothing of the file can be read.</summary>
public sealed record FileUnreadable(IReadOnlyList<string> Problems) : Refusal
{
    public override string Happened => Problems.Count == 1 ? Problems[0] : $"Nothing of the file can be read. {string.Join(' ', Problems)}";
    public override string Kept => "Nothing was kept; the form stays as it is.";
    public override string ToDo => "Mend the file and choose it again. The headings that are wanted stand on this page, and in the empty file to fill in.";
}

/// <summary>Files of materials, lots and formulas: kept, looked through row by row, brought in as a whole.</summary>
public sealed partial class BroughtFiles(StudioStore store)
{
    /// <summary>A file that was looked at and never brought in is forgotten after so long, when the next one comes.</summary>
    public static readonly TimeSpan KeptUntaken = Inventory.SalesFiles.KeptUnposted;

    private static readonly AddBroughtFileValidator AddShape = new();

    /// <param name="content">Of known length.</param>
    public Task<Outcome<BroughtFileAdded>> AddAsync(Actor actor, AddBroughtFile request, Stream content, CancellationToken cancel = default) =>
        store.RunAsync<AddBroughtFile, BroughtFileAdded>(actor, request, AddShape, async command =>
        {
            if (content.Length > AddBroughtFile.MostBytes)
            {
                return new Because("This file is larger than 4 MB.", "Part it in two, and bring one in after the other.");
            }

            content.Position = 0;
            var bytes = new byte[content.Length];
            await content.ReadExactlyAsync(bytes, cancel);
            if (await CsvSource.WhyNotUtf8Async(new MemoryStream(bytes), cancel) is { } other)
            {
                return other;
            }

            var file = new BroughtFile { Kind = request.Kind, Name = request.Name.Trim(), Content = bytes, Sha256 = SHA256.HashData(bytes), PersonId = command.PersonId, At = command.Now };
            if ((await TypedAsync(command.Db, file, null, cancel)).Problems is { Count: > 0 } problems)
            {
                return new FileUnreadable(problems);
            }

            var old = command.Now - KeptUntaken;
            await command.Db.BroughtFiles.Where(f => f.BroughtInAt == null && f.At < old).ExecuteDeleteAsync(cancel);
            command.Db.BroughtFiles.Add(file);
            return new BroughtFileAdded(file.Id);
        }, cancel: cancel);

    /// <summary>Goes through the whole file.</summary>
    /// <param name="decimalMark">'.' or ',': what somebody answered where the file does not show it.</param>
    /// <param name="skip">Rows before the page.</param>
    /// <param name="take">At most 200 rows.</param>
    /// <param name="refusedOnly">Shows refused rows alone.</param>
    public async Task<BringInPreview?> PreviewAsync(Guid fileId, char? decimalMark = null, int skip = 0, int take = 50, bool refusedOnly = false, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        if (await db.BroughtFiles.SingleOrDefaultAsync(f => f.Id == fileId, cancel) is not { } file)
        {
            return null;
        }

        var typed = await TypedAsync(db, file, decimalMark, cancel);
        var found = typed.Problems.Count > 0 ? new CheckedFile([], "nothing", (_, _) => Task.CompletedTask) : await CheckAsync(db, file.Kind, typed, null, cancel);
        var shown = found.Rows.Where(r => !refusedOnly || r.Fate == RowFate.Refused).Skip(skip).Take(Math.Clamp(take, 1, 200));
        int Count(RowFate fate) => found.Rows.Count(r => r.Fate == fate);
        return new BringInPreview(
            file.Id, file.Kind, file.Name, file.BroughtInAt, typed.Problems, typed.LeftAside, typed.Asks, Count(RowFate.New), Count(RowFate.Skipped), Count(RowFate.Refused), found.Makes,
            [.. shown.Select(r => r.Told)]);
    }

    /// <summary>
    /// Writes the refused rows as they stand in the file, the reason in a last column. A cell that a spreadsheet would take
    /// for a formula gets an apostrophe before it, which is taken off again when the file comes back.
    /// </summary>
    public async Task WriteRefusedAsync(Guid fileId, char? decimalMark, Stream output, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var file = await db.BroughtFiles.SingleOrDefaultAsync(f => f.Id == fileId, cancel);
        var typed = file is null ? null : await TypedAsync(db, file, decimalMark, cancel);
        IReadOnlyList<CheckedRow> refused = typed is not { Problems.Count: 0 } ? [] : [.. (await CheckAsync(db, file!.Kind, typed, null, cancel)).Rows.Where(r => r.Fate == RowFate.Refused)];
        var headings = typed?.Headings ?? [];
        var sheet = new SheetOf<CheckedRow>();
        foreach (var (heading, i) in headings.Select((h, i) => (h, i)))
        {
            sheet.Text(CsvCell.TextOf(heading), r => i < r.Cells.Row.Cells.Count ? CsvCell.TextOf(r.Cells.Row.Cells[i]) : null);
        }

        sheet.Number("Line in the file", r => r.Cells.Line).Text("Refused because", r => r.Why);
        await CsvSheet.WriteAsync(sheet.Of(refused, TimeZoneInfo.Utc), output, cancel);
    }

    /// <summary>What a file of this kind may hold, column by column.</summary>
    public async Task<IReadOnlyList<FileColumn>> ColumnsAsync(BringInKind kind, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await ColumnsAsync(db, kind, cancel);
    }

    /// <summary>An empty file with the headings, to fill in.</summary>
    public async Task WriteEmptyAsync(BringInKind kind, Stream output, CancellationToken cancel = default)
    {
        var sheet = new SheetOf<object>();
        foreach (var column in await ColumnsAsync(kind, cancel))
        {
            sheet.Text(column.Heading, _ => null);
        }

        await CsvSheet.WriteAsync(sheet.Of(Array.Empty<object>(), TimeZoneInfo.Utc), output, cancel);
    }

    private static async Task<IReadOnlyList<FileColumn>> ColumnsAsync(StudioDb db, BringInKind kind, CancellationToken cancel) => kind switch
    {
        BringInKind.Materials => MaterialTable.Columns,
        BringInKind.Lots => LotTable.Columns(await CurrencyAsync(db, cancel)),
        _ => FormulaTable.Columns,
    };

    private static async Task<TypedFile> TypedAsync(StudioDb db, BroughtFile file, char? decimalMark, CancellationToken cancel)
    {
        using var content = new MemoryStream(file.Content);
        return await TypedFile.ReadAsync(content, await ColumnsAsync(db, file.Kind, cancel), decimalMark is '.' or ',' ? decimalMark : null, (await CsvMarks.OfStudioAsync(db, cancel)).Dates, cancel);
    }

    private async Task<CheckedFile> CheckAsync(StudioDb db, BringInKind kind, TypedFile typed, Command? command, CancellationToken cancel)
    {
        var context = new CheckContext(db, command?.Today ?? await StudioDay.TodayAsync(db, store.Clock, cancel), await CurrencyAsync(db, cancel), command, cancel);
        return kind switch
        {
            BringInKind.Materials => await MaterialTable.CheckAsync(typed, context),
            BringInKind.Lots => await LotTable.CheckAsync(typed, context),
            _ => await FormulaTable.CheckAsync(typed, context),
        };
    }

    private static async Task<string> CurrencyAsync(StudioDb db, CancellationToken cancel) => await db.Studio.Select(s => s.Currency).SingleOrDefaultAsync(cancel) ?? "EUR";
}
