using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What is typed of somebody who buys. A name is enough, and nobody has to give one.</summary>
public abstract record CustomerFields : StudioRequest
{
    public string Name { get; set; } = "";
    public string? Email { get; set; }
    public string? Phone { get; set; }
    public string? Address { get; set; }
    public string? Note { get; set; }
}

public sealed record AddCustomer : CustomerFields;

public sealed record ChangeCustomer : CustomerFields
{
    public Guid CustomerId { get; set; }
    public uint Version { get; set; }
}

public sealed class CustomerFieldsValidator : AbstractValidator<CustomerFields>
{
    public CustomerFieldsValidator()
    {
        RuleFor(r => r.Name).NotEmpty().WithMessage("Give a name, or record the sale without one.");
        RuleFor(r => r.Name).OneLine("The name", 120);
        RuleFor(r => r.Email).OneLine("The e-mail address", 200);
        RuleFor(r => r.Phone).OneLine("The phone number", 60);
        RuleFor(r => r.Address).SeveralLines("The address", 400);
        RuleFor(r => r.Note).SeveralLines("The note", 1000);
    }
}

public sealed record CustomerAdded(Guid CustomerId, string Name);

public sealed record CustomerRow(Guid Id, string Name, string? Email, string? Phone, string? Address, string? Note, uint Version, DateOnly? LastSale);

public sealed partial class Customers(StudioStore store)
{
    private static readonly CustomerFieldsValidator Shape = new();

    /// <summary>By name, those that hold the text.</summary>
    /// <param name="take">1 to 200.</param>
    /// <param name="after">The last row of the page before.</param>
    public async Task<IReadOnlyList<CustomerRow>> ListAsync(string? search = null, int take = 100, CustomerRow? after = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var pattern = PlainText.ContainsPattern(search);
        var customers = db.Customers.Where(c => EF.Functions.ILike(c.Name, pattern) || (c.Email != null && EF.Functions.ILike(c.Email, pattern)));
        if (after is not null)
        {
            customers = customers.Where(c => EF.Functions.GreaterThan(ValueTuple.Create(c.Name, c.Id), ValueTuple.Create(after.Name, after.Id)));
        }

        return await customers
            .OrderBy(c => c.Name).ThenBy(c => c.Id)
            .Select(c => new CustomerRow(c.Id, c.Name, c.Email, c.Phone, c.Address, c.Note, c.Version, db.Sales.Where(s => s.CustomerId == c.Id).Max(s => (DateOnly?)s.SoldOn)))
            .Take(Math.Clamp(take, 1, 200)).ToListAsync(cancel);
    }

    /// <summary>All of them by name, read page by page.</summary>
    public async IAsyncEnumerable<CustomerRow> AllAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel = default)
    {
        const int page = 200;
        for (var rows = await ListAsync(null, page, null, cancel); rows.Count > 0; rows = await ListAsync(null, page, rows[^1], cancel))
        {
            foreach (var row in rows)
            {
                yield return row;
            }
        }
    }

    /// <summary>Null when there is none.</summary>
    public async Task<CustomerRow?> FindAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Customers.Where(c => c.Id == id)
            .Select(c => new CustomerRow(c.Id, c.Name, c.Email, c.Phone, c.Address, c.Note, c.Version, db.Sales.Where(s => s.CustomerId == c.Id).Max(s => (DateOnly?)s.SoldOn)))
            .SingleOrDefaultAsync(cancel);
    }

    public Task<Outcome<CustomerAdded>> AddAsync(Actor actor, AddCustomer request, CancellationToken cancel = default) =>
        store.RunAsync<AddCustomer, CustomerAdded>(actor, request, Shape, command =>
        {
            var customer = new Customer { Name = request.Name.Trim(), AddedAt = command.Now };
            Put(customer, request);
            command.Db.Customers.Add(customer);
            command.Record("customer", customer.Id, "Added a customer", Topics.Finished);
            return Task.FromResult<Outcome<CustomerAdded>>(new CustomerAdded(customer.Id, customer.Name));
        }, cancel: cancel);

    public Task<Outcome<Nothing>> ChangeAsync(Actor actor, ChangeCustomer request, CancellationToken cancel = default) =>
        store.RunAsync<ChangeCustomer, Nothing>(actor, request, Shape, async command =>
        {
            var customer = await command.Db.Customers.SingleOrDefaultAsync(c => c.Id == request.CustomerId, cancel);
            if (customer is null)
            {
                return new NotFound("This customer");
            }

            command.ExpectVersion(customer, request.Version);
            customer.Name = request.Name.Trim();
            Put(customer, request);
            command.Record("customer", customer.Id, "Changed a customer", Topics.Finished);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale(customer.Name, "Somebody");
        }, cancel: cancel);

    private static void Put(Customer customer, CustomerFields typed)
    {
        customer.Email = Kept(typed.Email);
        customer.Phone = Kept(typed.Phone);
        customer.Address = Kept(typed.Address);
        customer.Note = Kept(typed.Note);
    }

    private static string? Kept(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
