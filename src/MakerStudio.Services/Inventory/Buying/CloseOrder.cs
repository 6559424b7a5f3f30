using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What is still to come of an order is waited for no longer. What came stays as it is.</summary>
public sealed record CloseOrder : StudioRequest
{
    public Guid OrderId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class CloseOrderValidator : AbstractValidator<CloseOrder>
{
    public CloseOrderValidator() => RuleFor(r => r.Reason).OneLine("The reason", 200).NotEmpty().WithMessage("Say why the rest is not waited for.");
}

public sealed partial class Purchasing
{
    private static readonly CloseOrderValidator CloseShape = new();

    public Task<Outcome<Nothing>> CloseAsync(Actor actor, CloseOrder request, CancellationToken cancel = default) =>
        store.RunAsync<CloseOrder, Nothing>(actor, request, CloseShape, async command =>
        {
            if (await LockAsync(command, request.OrderId) is not { } order)
            {
                return new NotFound("This order");
            }

            var page = (await FindAsync(command.Db, order.Code, cancel))!;
            if (!page.Order.IsOpen)
            {
                return new Because($"Order {order.Code} has nothing still to come.");
            }

            command.Db.OrderClosings.Add(new OrderClosing { OrderId = order.Id, Reason = request.Reason.Trim(), PersonId = command.PersonId, At = command.Now });
            command.Record("order", order.Id, $"Closed Order {order.Code}: {request.Reason.Trim()}", Topics.Orders);
            return Nothing.Value;
        }, cancel: cancel);

    /// <summary>One act on an order at a time.</summary>
    private static async Task<PurchaseOrder?> LockAsync(Command command, Guid id)
    {
        await command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('order ' || cast({id} as text)))");
        return await command.Db.PurchaseOrders.AsNoTracking().SingleOrDefaultAsync(o => o.Id == id);
    }
}
