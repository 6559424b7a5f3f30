using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;

namespace MakerStudio.Services.Inventory;

/// <summary>Records every line of a previewed file as a sale, or none of them.</summary>
public sealed record PostSalesFile : StudioRequest
{
    public Guid FileId { get; set; }
}

public sealed record SalesFilePosted(int Sales, int Units);

/// <summary>Some lines cannot be sold.</summary>
public sealed record LinesRejected(int Rejected, int Lines, long FirstLine, string FirstReason) : Refusal
{
    public override string Happened => $"{Rejected:#,0} of {Lines:#,0} lines {(Rejected == 1 ? "is" : "are")} rejected; the first is line {FirstLine:#,0}: {FirstReason}";
    public override string Kept => "Nothing of the file was recorded.";
    public override string ToDo => "Mend these lines in the file, or the stock, and upload it again.";
}

public sealed partial class SalesFiles
{
    public Task<Outcome<SalesFilePosted>> PostAsync(Actor actor, PostSalesFile request, CancellationToken cancel = default) =>
        store.RunAsync<PostSalesFile, SalesFilePosted>(actor, request, null, async command =>
        {
            var found = await command.Db.SalesFiles.FromSql($"select * from sales_files where id = {request.FileId} for update").ToListAsync(cancel);
            if (found is not [var file])
            {
                return new NotFound("This file");
            }

            if (file.PostedAt is not null || await command.Db.SalesFiles.AnyAsync(f => f.Id != file.Id && f.PostedAt != null && f.Sha256 == file.Sha256, cancel))
            {
                return new Because("This file was posted before.", "Its sales are in the list.");
            }

            _ = await Places.LockAsync(command, Place.StudioId, cancel);
            var batches = await command.Db.UnitBalances.Where(b => b.PlaceId == Place.StudioId && b.Status == UnitStatus.Saleable && b.Count > 0).Select(b => b.BatchId).ToListAsync(cancel);
            _ = await UnitLedger.LockAsync(command, batches, cancel);
            if (await RejectedAsync(command, file.Id, cancel) is { } rejected)
            {
                return rejected;
            }

            var posted = await WriteAsync(command, file.Id, await UnitLedger.UnitCostsAsync(command.Db, batches, cancel), cancel);
            await command.Db.SalesFiles.Where(f => f.Id == request.FileId).ExecuteUpdateAsync(
                s => s.SetProperty(f => f.PostedAt, command.Now).SetProperty(f => f.PostedById, command.PersonId).SetProperty(f => f.SalesPosted, posted.Sales), cancel);
            command.Record("sales file", request.FileId, $"Posted {posted.Sales} sales of a file", Topics.Finished);
            return posted;
        }, cancel: cancel);

    /// <summary>The first time through writes nothing.</summary>
    private static async Task<LinesRejected?> RejectedAsync(Command command, Guid fileId, CancellationToken cancel)
    {
        var import = await SalesImport.OfAsync(command.Db, command.Today, cancel);
        await using var stored = new StoredFile(command.Db, fileId);
        var (lines, rejected, first) = (0, 0, (CsvSale?)null);
        await foreach (var some in import.RunAsync(command.Db, SalesCsv.ReadAsync(stored, await CsvMarks.OfStudioAsync(command.Db, cancel), cancel), cancel))
        {
            lines += some.Count;
            rejected += some.Count(s => s.Sale.Problem is not null);
            first ??= some.Select(s => s.Sale).FirstOrDefault(s => s.Problem is not null);
        }

        return first is not null ? new LinesRejected(rejected, lines, first.Line, first.Problem!)
            : lines == 0 ? new LinesRejected(0, 0, 1, "there is no line under the header.") : null;
    }

    private static async Task<SalesFilePosted> WriteAsync(Command command, Guid fileId, Dictionary<Guid, decimal> costs, CancellationToken cancel)
    {
        var marks = await CsvMarks.OfStudioAsync(command.Db, cancel);
        var import = await SalesImport.OfAsync(command.Db, command.Today, cancel, posting: fileId);
        await using var stored = new StoredFile(command.Db, fileId);
        var posted = new SalesFilePosted(0, 0);
        await foreach (var some in import.RunAsync(command.Db, SalesCsv.ReadAsync(stored, marks, cancel), cancel))
        {
            var customers = await CustomersAsync(command, some.Select(s => s.Sale.Customer).OfType<string>().Distinct(), cancel);
            var codes = await command.NextCodesAsync(Sales.CodePrefix, some.Count);
            var ids = some.ConvertAll(_ => Guid.CreateVersion7());
            await new SalesCopy(command, fileId, some, ids, codes, customers, costs).WriteAsync(cancel);
            posted = new SalesFilePosted(posted.Sales + some.Count, posted.Units + some.Sum(s => s.Sale.Quantity));
        }

        return posted;
    }

    /// <summary>Customers by the name in the file; new ones are added.</summary>
    private static async Task<Dictionary<string, Guid>> CustomersAsync(Command command, IEnumerable<string> names, CancellationToken cancel)
    {
        var wanted = names.ToArray();
        var known = (await command.Db.Customers.AsNoTracking().Where(c => wanted.Contains(c.Name)).OrderBy(c => c.AddedAt).Select(c => new { c.Name, c.Id }).ToListAsync(cancel))
            .GroupBy(c => c.Name).ToDictionary(g => g.Key, g => g.First().Id);
        foreach (var name in wanted.Where(n => !known.ContainsKey(n)))
        {
            var customer = new Customer { Name = name, AddedAt = command.Now };
            command.Db.Customers.Add(customer);
            known[name] = customer.Id;
        }

        await command.Db.SaveChangesAsync(cancel);
        command.Db.ChangeTracker.Clear();
        return known;
    }
}

/// <summary>Writes some hundreds of sales at once by COPY, in the open transaction.</summary>
internal sealed class SalesCopy(
    Command command, Guid fileId, List<(CsvSale Sale, IReadOnlyList<(Guid BatchId, string Code, int Count)> Picks)> some, List<Guid> ids, IReadOnlyList<string> codes,
    Dictionary<string, Guid> customers, Dictionary<Guid, decimal> costs)
{
    public async Task WriteAsync(CancellationToken cancel)
    {
        var connection = (NpgsqlConnection)command.Db.Database.GetDbConnection();
        await using (var sales = await connection.BeginBinaryImportAsync(
            "copy sales (id, code, kind, place_id, customer_id, channel, reference, sold_on, tax_percent, tax_basis, fees, sales_file_id, person_id, at, request_id) from stdin (format binary)", cancel))
        {
            for (var n = 0; n < some.Count; n++)
            {
                var sale = some[n].Sale;
                await sales.WriteRowAsync(
                    cancel, ids[n], codes[n], nameof(SaleKind.Sale), Place.StudioId, sale.Customer is { } name ? customers[name] : DBNull.Value, sale.Channel,
                    (object?)sale.Order ?? DBNull.Value, sale.SoldOn, sale.Tax, nameof(TaxBasis.InTag), sale.Fees, fileId, command.PersonId, command.Now, command.RequestId);
            }

            await sales.CompleteAsync(cancel);
        }

        await using (var lines = await connection.BeginBinaryImportAsync(
            "copy sale_lines (id, sale_id, position, batch_id, quantity, tag, net_price, unit_cost, is_for_broken) from stdin (format binary)", cancel))
        {
            foreach (var (n, position, pick) in Picks())
            {
                var sale = some[n].Sale;
                await lines.WriteRowAsync(
                    cancel, Guid.CreateVersion7(), ids[n], position, pick.BatchId, pick.Count, sale.Price, Sales.NetOf(new SalesTax(sale.Tax / 100m, TaxBasis.InTag), sale.Price),
                    costs.TryGetValue(pick.BatchId, out var cost) ? cost : DBNull.Value, false);
            }

            await lines.CompleteAsync(cancel);
        }

        await using var movements = await connection.BeginBinaryImportAsync(
            "copy unit_movements (entry_id, kind, batch_id, place_id, status, change, sale_id, person_id, at, request_id) from stdin (format binary)", cancel);
        foreach (var (n, _, pick) in Picks())
        {
            await movements.WriteRowAsync(
                cancel, ids[n], nameof(UnitMoveKind.Sale), pick.BatchId, Place.StudioId, nameof(UnitStatus.Saleable), -pick.Count, ids[n], command.PersonId, command.Now, command.RequestId);
        }

        await movements.CompleteAsync(cancel);
    }

    private IEnumerable<(int Sale, int Position, (Guid BatchId, string Code, int Count) Pick)> Picks() =>
        some.SelectMany((s, n) => s.Picks.Select((pick, p) => (n, p + 1, pick)));
}
