using System.Globalization;
using System.Security.Cryptography;
using CsvHelper;
using FluentValidation;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Keeps a sales file, so that it can be previewed and posted later. Nothing is sold yet.</summary>
public sealed record AddSalesFile : StudioRequest
{
    /// <summary>Largest file, bytes: about half a million lines. Own bound.</summary>
    public const long MostBytes = 64 * 1024 * 1024;
    public string Name { get; set; } = "";
}

public sealed class AddSalesFileValidator : AbstractValidator<AddSalesFile>
{
    public AddSalesFileValidator() => RuleFor(r => r.Name).OneLine("The name of the file", 200);
}

public sealed record SalesFileAdded(Guid FileId, long Bytes);

/// <param name="Rows">The part that was asked for.</param>
/// <param name="Tags">Tags of all lines that would be sold.</param>
public sealed record SalesPreview(Guid FileId, string Name, DateTimeOffset? PostedAt, int Lines, int Rejected, int Units, decimal Tags, IReadOnlyList<ImportRow> Rows);

public sealed partial class SalesFiles(StudioStore store)
{
    /// <summary>A file that was looked at and never recorded is forgotten after so long, when the next one comes.</summary>
    public static readonly TimeSpan KeptUnposted = TimeSpan.FromDays(7);

    private const int PartBytes = 64 * 1024;
    private static readonly AddSalesFileValidator AddShape = new();

    /// <param name="content">Read once, in parts; one that can seek may be read again after a broken line.</param>
    public Task<Outcome<SalesFileAdded>> AddAsync(Actor actor, AddSalesFile request, Stream content, CancellationToken cancel = default) =>
        store.RunAsync<AddSalesFile, SalesFileAdded>(actor, request, AddShape, async command =>
        {
            if (content.CanSeek)
            {
                content.Position = 0;
            }

            var file = new SalesFile { Name = request.Name.Trim(), Sha256 = [], PersonId = command.PersonId, At = command.Now };
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            await ForgetOldAsync(command, cancel);
            command.Db.SalesFiles.Add(file);
            await command.Db.SaveChangesAsync(cancel);
            var buffer = new byte[PartBytes];
            for (var number = 0; await content.ReadAtLeastAsync(buffer, PartBytes, throwOnEndOfStream: false, cancel) is > 0 and var read; number++)
            {
                file.Bytes += read;
                if (file.Bytes > AddSalesFile.MostBytes)
                {
                    return new Because("This file is larger than 64 MB.", "Split it, and post one part after the other.");
                }

                hash.AppendData(buffer, 0, read);
                var part = buffer[..read];
                await command.Db.Database.ExecuteSqlAsync($"insert into sales_file_parts (file_id, number, content) values ({file.Id}, {number}, {part})", cancel);
            }

            file.Sha256 = hash.GetHashAndReset();
            await command.Db.SaveChangesAsync(cancel);
            await using (var bytes = new StoredFile(command.Db, file.Id))
            {
                if (await CsvSource.WhyNotUtf8Async(bytes, cancel) is { } other)
                {
                    return other;
                }
            }

            await using var stored = new StoredFile(command.Db, file.Id);
            if (await SalesCsv.WhyNotAsync(stored, cancel) is { } missing)
            {
                return missing;
            }

            return await command.Db.SalesFiles.AnyAsync(f => f.Id != file.Id && f.PostedAt != null && f.Sha256 == file.Sha256, cancel)
                ? new Because("This very file was posted before.", "Its sales are in the list; take them back there if they were wrong.")
                : new SalesFileAdded(file.Id, file.Bytes);
        }, cancel: cancel);

    /// <summary>Their parts go with them; one that is being recorded just now is waited for, and stays.</summary>
    private static Task ForgetOldAsync(Command command, CancellationToken cancel)
    {
        var before = command.Now - KeptUnposted;
        return command.Db.SalesFiles.Where(f => f.PostedAt == null && f.At < before).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Goes through the whole file, holding no more of it than a thousand lines and the page that is asked for.</summary>
    /// <param name="skip">Rows before the page.</param>
    /// <param name="take">At most 200 rows.</param>
    /// <param name="rejectedOnly">Counts and shows rejected lines alone in the page.</param>
    public async Task<SalesPreview?> PreviewAsync(Guid fileId, int skip = 0, int take = 50, bool rejectedOnly = false, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        if (await db.SalesFiles.SingleOrDefaultAsync(f => f.Id == fileId, cancel) is not { } file)
        {
            return null;
        }

        var import = await SalesImport.OfAsync(db, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
        await using var stored = new StoredFile(db, fileId);
        var (lines, rejected, units, shown, tags, rows) = (0, 0, 0, 0, 0m, new List<ImportRow>());
        await foreach (var some in import.RunAsync(db, SalesCsv.ReadAsync(stored, await CsvMarks.OfStudioAsync(db, cancel), cancel), cancel))
        {
            foreach (var (sale, picks) in some)
            {
                lines++;
                rejected += sale.Problem is null ? 0 : 1;
                units += picks.Sum(p => p.Count);
                tags += sale.Problem is null ? sale.Quantity * sale.Price : 0;
                if ((!rejectedOnly || sale.Problem is not null) && shown++ >= skip && rows.Count < Math.Clamp(take, 1, 200))
                {
                    rows.Add(RowOf(sale, picks));
                }
            }
        }

        return new SalesPreview(file.Id, file.Name, file.PostedAt, lines, rejected, units, tags, rows);
    }

    /// <summary>
    /// Writes the rejected lines with their reasons. A field that a spreadsheet would take for a formula gets an
    /// apostrophe before it.
    /// </summary>
    public async Task WriteRejectedAsync(Guid fileId, Stream output, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var import = await SalesImport.OfAsync(db, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
        await using var stored = new StoredFile(db, fileId);
        await using var csv = CsvWriter.Create(output, new CsvWriterOptions { Injection = CsvInjection.Escape, FormatProvider = CultureInfo.InvariantCulture }, true);
        await csv.WriteRecordAsync(["line", "channel", "order", "customer", "reason"], cancel);
        await foreach (var some in import.RunAsync(db, SalesCsv.ReadAsync(stored, await CsvMarks.OfStudioAsync(db, cancel), cancel), cancel))
        {
            foreach (var (sale, _) in some.Where(s => s.Sale.Problem is not null))
            {
                await csv.WriteRecordAsync([sale.Line.ToString(CultureInfo.InvariantCulture), sale.Channel, sale.Order ?? "", sale.Customer ?? "", sale.Problem!], cancel);
            }
        }

        await csv.FlushAsync(cancel);
    }

    private static ImportRow RowOf(CsvSale sale, IReadOnlyList<(Guid BatchId, string Code, int Count)> picks) => new(
        sale.Line, sale.Channel, sale.Order, sale.Customer, sale.Quantity,
        sale.Problem is null ? $"{string.Join(", ", picks.Select(p => $"{p.Code} × {p.Count}"))} at {AmountWords.Money(sale.Price)}" : "", sale.Problem);

    /// <summary>A stored file read part by part.</summary>
    private sealed class StoredFile(StudioDb db, Guid fileId) : Stream
    {
        private byte[] _part = [];
        private int _at;
        private int _next;

        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            if (_at == _part.Length)
            {
                var number = _next++;
                _part = await db.SalesFileParts.AsNoTracking().Where(p => p.FileId == fileId && p.Number == number).Select(p => p.Content).SingleOrDefaultAsync(cancellationToken) ?? [];
                _at = 0;
            }

            var count = Math.Min(buffer.Length, _part.Length - _at);
            _part.AsMemory(_at, count).CopyTo(buffer);
            _at += count;
            return count;
        }

        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) => ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("The file is read asynchronously.");

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
