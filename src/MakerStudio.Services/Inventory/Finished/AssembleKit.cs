using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Builds kits from units on the studio's shelf and packaging from its lots, first expired first out.</summary>
public sealed record AssembleKit : StudioRequest
{
    public Guid KitId { get; set; }
    public int? Count { get; set; }
}

/// <summary>Takes kits apart: units go back on the shelf, and so does packaging that can be used again.</summary>
public sealed record UndoKit : StudioRequest
{
    public Guid KitLotId { get; set; }
    public int? Count { get; set; }
    public bool PackagingIsGood { get; set; } = true;
    public string Reason { get; set; } = "";
}

public sealed class AssembleKitValidator : AbstractValidator<AssembleKit>
{
    internal const int MostKits = 10_000;

    public AssembleKitValidator() =>
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, MostKits).WithMessage("Between 1 and 10,000 kits are assembled.");
}

public sealed class UndoKitValidator : AbstractValidator<UndoKit>
{
    public UndoKitValidator()
    {
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, AssembleKitValidator.MostKits).WithMessage("Between 1 and 10,000 kits are taken apart.");
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why they are taken apart.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
    }
}

/// <param name="Codes">One for each group of kits with the same codes inside: "KT-3 × 4".</param>
/// <param name="Cost">Of all of them, not rounded.</param>
public sealed record KitsAssembled(IReadOnlyList<string> Codes, int Count, decimal Cost);

/// <summary>Something of the kit is scarce.</summary>
public sealed record KitShort(string Kit, int Asked, int Possible, string Scarcest, long There) : Refusal
{
    public override string Happened => $"{Asked:#,0} × {Kit} asked for; {Scarcest} allows {Possible:#,0} ({There:#,0} there).";
    public override string ToDo => Possible == 0 ? $"Fill or receive more of {Scarcest} first." : $"Assemble {Possible:#,0}, or fill and receive more first.";
}

public sealed partial class Kits
{
    private static readonly AssembleKitValidator AssembleShape = new();
    private static readonly UndoKitValidator UndoShape = new();

    public Task<Outcome<KitsAssembled>> AssembleAsync(Actor actor, AssembleKit request, CancellationToken cancel = default) =>
        store.RunAsync<AssembleKit, KitsAssembled>(actor, request, AssembleShape, async command =>
        {
            var kit = await command.Db.Kits.AsNoTracking().Include(k => k.Items).ThenInclude(i => i.Formula).Include(k => k.Parts).ThenInclude(p => p.Material)
                .AsSplitQuery().SingleOrDefaultAsync(k => k.Id == request.KitId && k.PutAwayAt == null, cancel);
            if (kit is null)
            {
                return new NotFound("This kit");
            }

            // Which batches and lots it may be is read first, then they are locked, then it is read again: what counts is the second.
            var before = await KitNeeds.OfAsync(command.Db, kit, command.Today, cancel);
            var locked = await UnitLedger.LockAsync(command, before.Take(kit.Items.Count).SelectMany(n => n.Offers).Select(o => o.Id), cancel);
            var lots = await Ledger.LockAsync(command, before.Skip(kit.Items.Count).SelectMany(n => n.Offers).Select(o => o.Id));
            var needs = await KitNeeds.OfAsync(command.Db, kit, command.Today, cancel);
            var plan = KitPlan.For(request.Count!.Value, [.. needs.Select(n => n with { Offers = [.. n.Offers.Where(o => locked.Batches.ContainsKey(o.Id) || lots.ContainsKey(o.Id))] })]);
            if (!plan.IsMet)
            {
                return new KitShort(kit.Name, plan.Asked, plan.Possible, plan.Scarcest!.Name, plan.Scarcest.Available);
            }

            var codes = new List<string>();
            foreach (var group in plan.Groups)
            {
                codes.Add($"{await AddLotAsync(command, kit, needs, group, locked, lots)} × {group.Kits}");
            }

            command.Record("kit", kit.Id, $"Assembled {request.Count} × {kit.Name}: {string.Join(", ", codes)}", Topics.Finished);
            if (lots.Count > 0)
            {
                command.Announce(Topics.Lots, null);
            }

            return new KitsAssembled(codes, request.Count.Value, plan.Groups.Sum(g => g.Kits * g.UnitCost));
        }, cancel: cancel);

    public Task<Outcome<Nothing>> UndoAsync(Actor actor, UndoKit request, CancellationToken cancel = default) =>
        store.RunAsync<UndoKit, Nothing>(actor, request, UndoShape, async command =>
        {
            var contents = await command.Db.KitLotContents.AsNoTracking().Where(c => c.KitLotId == request.KitLotId).ToListAsync(cancel);
            if (contents.Count == 0)
            {
                return new NotFound("These kits");
            }

            var locked = await UnitLedger.LockAsync(command, contents.Select(c => c.BatchId).OfType<Guid>(), cancel);
            var lot = await LockLotAsync(command, request.KitLotId, cancel);
            var packaging = request.PackagingIsGood ? await Ledger.LockAsync(command, contents.Select(c => c.LotId).OfType<Guid>()) : [];
            if (lot.Left < request.Count)
            {
                return new UnitsShort($"Kits {lot.Code}", request.Count!.Value, lot.Left);
            }

            var entry = new UnitEntry(Guid.CreateVersion7(), request.Reason.Trim()) { KitLotId = lot.Id };
            (lot.Left, lot.Undone) = (lot.Left - request.Count!.Value, lot.Undone + request.Count.Value);
            foreach (var content in contents)
            {
                if (content.BatchId is { } batch)
                {
                    UnitLedger.Post(command, locked, entry, new UnitMove(batch, UnitMoveKind.OutOfKit, request.Count.Value * content.Count));
                }
                else if (packaging.TryGetValue(content.LotId!.Value, out var part))
                {
                    Ledger.Post(command, part, MovementKind.Return, (long)request.Count.Value * content.Count, m => (m.KitLotId, m.UnitCost, m.Note) = (lot.Id, content.UnitCost, $"Kits {lot.Code} taken apart"));
                }
            }

            command.Record("kit", lot.KitId, $"Took {request.Count} of {lot.Code} apart: {request.Reason.Trim()}", Topics.Finished);
            if (packaging.Count > 0)
            {
                command.Announce(Topics.Lots, null);
            }

            return Nothing.Value;
        }, cancel: cancel);

    private static async Task<string> AddLotAsync(
        Command command, Kit kit, IReadOnlyList<KitNeed> needs, KitGroup group, LockedUnits locked, Dictionary<Guid, Lot> lots)
    {
        var lot = new KitLot
        {
            Code = await command.NextCodeAsync(CodePrefix), KitId = kit.Id, Name = kit.Name, Made = group.Kits, Left = group.Kits, UnitCost = group.UnitCost,
            MadeOn = command.Today, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        command.Db.KitLots.Add(lot);
        var entry = new UnitEntry(lot.Id, kit.Name) { KitLotId = lot.Id };
        foreach (var content in group.Contents)
        {
            var isUnit = content.Need < kit.Items.Count;
            lot.Contents.Add(new KitLotContent
            {
                Position = lot.Contents.Count + 1, BatchId = isUnit ? content.Id : null, LotId = isUnit ? null : content.Id, Name = needs[content.Need].Name,
                Count = content.Count, UnitCost = content.UnitCost,
            });
            if (isUnit)
            {
                UnitLedger.Post(command, locked, entry, new UnitMove(content.Id, UnitMoveKind.IntoKit, group.Kits * content.Count));
            }
            else
            {
                Ledger.Post(command, lots[content.Id], MovementKind.Packaging, -(long)group.Kits * content.Count, m => (m.KitLotId, m.Note) = (lot.Id, $"{group.Kits} × {kit.Name}, {lot.Code}"));
            }
        }

        return lot.Code;
    }
}
