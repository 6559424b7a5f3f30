using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>What happens after filling, and late: sales and returns, consignment, kits, write-downs, losses, receipts that follow.</summary>
internal sealed partial class LedgerWalk
{
    private const int UnitsAtFirst = 4_000;
    private static readonly UnitMoveKind[] Plain = [UnitMoveKind.Tester, UnitMoveKind.Gift, UnitMoveKind.Breakage, UnitMoveKind.Retain, UnitMoveKind.Hold];
    private readonly Sales _sales = studio.Get<Sales>();
    private readonly Kits _kits = studio.Get<Kits>();
    private readonly Consignments _consignments = studio.Get<Consignments>();
    private readonly FinishedGoods _goods = studio.Get<FinishedGoods>();
    private readonly Stock _stock = studio.Get<Stock>();
    private readonly Services.Inventory.Books _books = studio.Get<Services.Inventory.Books>();
    private readonly List<Guid> _units = [];
    private readonly List<(Guid Sale, Guid Batch)> _salesMade = [];
    private readonly Dictionary<string, int> _acts = [];
    private Guid _shop;
    private Guid _kit;

    /// <summary>How often each act on goods was done.</summary>
    public IReadOnlyDictionary<string, int> GoodsDone => _acts;

    /// <summary>Two batches filled before, a shop that sells on consignment, a kit of two units in a box.</summary>
    public async Task OpenShopAsync()
    {
        foreach (var (code, cost) in new[] { ("RS-901", 4m), ("RS-902", 6.37m) })
        {
            _units.Add(await studio.FilledOfAsync(code, version, "Fig", "room-spray-alcohol", "10 mL", UnitsAtFirst, unitCost: cost));
        }

        await using var db = studio.Db();
        var formula = await db.FormulaVersions.Where(v => v.Id == version).Select(v => v.FormulaId).SingleAsync();
        Tally(await studio.Get<Places>().AddAsync(studio.Ana, new AddPlace { Name = "Tollgate House", Kind = PlaceKind.Consignment, CommissionPercent = 40m, PaysBroken = true }), out var shop);
        Tally(await _kits.DefineAsync(studio.Ana, new DefineKit
        {
            Name = "Fig pair", Items = [new KitItemTyped { FormulaId = formula, SizeName = "10 mL", Count = 2 }], Parts = [new KitPartTyped { MaterialId = materials[Bottle], Count = 1 }],
        }), out var kit);
        (_shop, _kit) = (shop!.PlaceId, kit!.KitId);
    }

    private Task StepGoodsAsync() => random.Next(24) switch
    {
        < 5 => SellAsync(),
        < 7 => SellKitsAsync(),
        < 9 => ReturnAsync(),
        < 11 => GoodsAsync("placed", _consignments.PlaceAsync(Somebody, new PlaceUnits { PlaceId = _shop, Lines = [new UnitsToPlace { BatchId = AnyUnits, Count = random.Next(0, 9), NetPrice = 18.33m }] })),
        < 13 => ReportAsync(),
        < 16 => SetAsideAsync(),
        < 18 => TakeEntryBackAsync(),
        < 20 => AssembleAsync(),
        20 => UndoKitsAsync(),
        21 when random.Next(2) == 0 => WriteDownAsync(),
        22 when _open.Count > 0 => LoseAsync(_open[random.Next(_open.Count)]),
        _ => MatchAsync(),
    };

    private Guid AnyUnits => _units[random.Next(_units.Count)];

    private async Task SellAsync()
    {
        var batch = AnyUnits;
        var sale = SeedGoods.SaleOf(batch, random.Next(0, 9));
        sale.Lines[0].Reason = "random";
        if (await GoodsAsync("sold", _sales.RecordAsync(Somebody, sale)) is { } done)
        {
            _salesMade.Add((done.SaleId, batch));
        }
    }

    private async Task SellKitsAsync()
    {
        if (await AnyKitsAsync() is { } kits
            && await GoodsAsync("kits sold", _sales.RecordAsync(Somebody, new RecordSale { Lines = [new SoldLine { KitLotId = kits, Quantity = random.Next(0, 3), Tag = 40m }] })) is { } done)
        {
            _salesMade.Add((done.SaleId, AnyUnits));
        }
    }

    private async Task ReturnAsync()
    {
        if (_salesMade.Count == 0)
        {
            return;
        }

        var (sale, batch) = _salesMade[random.Next(_salesMade.Count)];
        await GoodsAsync("came back", _sales.ReturnAsync(Somebody, new ReturnUnits { SaleId = sale, BatchId = batch, Count = random.Next(0, 4), RefundEach = random.Next(2) * 10m, Reason = "random" }));
    }

    private async Task ReportAsync()
    {
        var batch = AnyUnits;
        var there = await studio.UnitsAsync(batch, _shop);
        var sold = random.Next(0, there + 1);
        await GoodsAsync("reported", _consignments.ReportAsync(Somebody, new RecordShopReport
        {
            PlaceId = _shop,
            Lines = [new ShopReported { BatchId = batch, Sold = sold, Broken = random.Next(0, there - sold + 2), NetPrice = 18.33m, CommissionPercent = 40m, PaidPerBroken = random.Next(2) * 4.51m }],
        }));
    }

    private Task SetAsideAsync()
    {
        var isPlain = random.Next(2) == 0;
        return GoodsAsync("set aside", _goods.SetAsideAsync(Somebody, new SetAside
        {
            BatchId = AnyUnits, PlaceId = random.Next(4) == 0 ? _shop : Places.StudioShelf, From = isPlain ? UnitStatus.Saleable : (UnitStatus)random.Next(5),
            Kind = isPlain ? Plain[random.Next(Plain.Length)] : SetAsideValidator.Offered[random.Next(SetAsideValidator.Offered.Count)], Count = random.Next(0, 5), Reason = "random",
        }));
    }

    private async Task TakeEntryBackAsync()
    {
        await using var db = studio.Db();
        var entries = await db.UnitMovements.OrderByDescending(m => m.Id).Select(m => m.EntryId).Take(60).Distinct().ToListAsync();
        await GoodsAsync("taken back", _goods.TakeBackAsync(Somebody, new TakeBackEntry { EntryId = entries.Order().ElementAt(random.Next(entries.Count)), Reason = "random" }));
    }

    private async Task AssembleAsync()
    {
        var request = new AssembleKit { KitId = _kit, Count = random.Next(0, 4) };
        var done = await GoodsAsync("assembled", _kits.AssembleAsync(Somebody, request));
        await (done is null ? Task.CompletedTask : PackagingMovedAsync(request.RequestId));
    }

    private async Task UndoKitsAsync()
    {
        if (await AnyKitsAsync() is not { } kits)
        {
            return;
        }

        var request = new UndoKit { KitLotId = kits, Count = random.Next(0, 3), PackagingIsGood = random.Next(2) == 0, Reason = "random" };
        var done = await GoodsAsync("kits undone", _kits.UndoAsync(Somebody, request));
        await (done is null ? Task.CompletedTask : PackagingMovedAsync(request.RequestId));
    }

    private async Task WriteDownAsync()
    {
        var view = await _books.ReadAsync();
        var request = new WriteDownStock { SellingPrice = random.Next(0, 900) / 100m, ToSell = random.Next(2) * 0.5m, Reason = "random" };
        IReadOnlyList<LotBookRow> lots;
        if (random.Next(2) == 0 && view.Materials.Count > 0)
        {
            var material = view.Materials[random.Next(view.Materials.Count)];
            (request.MaterialId, lots) = (material.MaterialId, material.Lots);
        }
        else
        {
            var product = view.Finished[random.Next(view.Finished.Count)];
            (request.Product, lots) = (product.Key, product.Lots);
        }

        request.Lot = lots.Count == 0 || random.Next(2) == 0 ? null : lots[random.Next(lots.Count)].Lot;
        await GoodsAsync("written down", _books.WriteDownAsync(Somebody, request));
    }

    private Task LoseAsync(ModelBatch batch) =>
        GoodsAsync("lost", _fills.ExpenseLossAsync(batch.By, new ExpenseLoss { BatchId = batch.Id, Grams = random.Next(0, 50) / 10m, Reason = "random" }));

    /// <summary>Weighs what is not here yet, at an estimate.</summary>
    private async Task WeighAheadAsync(ModelBatch batch, SheetLine line)
    {
        var outcome = await _sheets.RecordAsync(batch.By, new RecordWeighing
        {
            BatchId = batch.Id, LineId = line.LineId, NetMilligrams = line.RemainingMilligrams, AsTyped = true, OutOfOrder = true, ReceiptToFollow = true,
            EstimatedUnitCost = random.Next(0, 200) / 1000m, Reason = "random",
        });
        if (Tally(outcome, out var recorded))
        {
            _acts["ahead"] = _acts.GetValueOrDefault("ahead") + 1;
            batch.Weighings.Add((recorded.WeighingId!.Value, null, line.RemainingMilligrams));
            Weighed++;
        }
    }

    private async Task MatchAsync()
    {
        await using var db = studio.Db();
        var pending = await db.PendingReceipts.Where(p => p.MatchedAt == null).OrderBy(p => p.At).Select(p => new { p.Id, p.WeighingId, p.MaterialId, p.Milligrams }).Take(5).ToListAsync();
        if (pending.Count == 0)
        {
            return;
        }

        var one = pending[random.Next(pending.Count)];
        var fitting = _shelf.Where(l => l.MaterialId == one.MaterialId && l.OnHand >= one.Milligrams && l.MayBeUsed).ToList();
        var lot = fitting.Count == 0 || random.Next(10) == 0 ? Pick() : fitting[random.Next(fitting.Count)];
        if (await GoodsAsync("matched", _stock.MatchAsync(Somebody, new MatchPendingReceipt { PendingId = one.Id, LotId = lot.Id })) is null)
        {
            return;
        }

        await MoveAsync(lot, -one.Milligrams);
        foreach (var batch in _open.Where(b => b.Weighings.Exists(w => w.Id == one.WeighingId)))
        {
            var at = batch.Weighings.FindIndex(w => w.Id == one.WeighingId);
            batch.Weighings[at] = batch.Weighings[at] with { Lot = lot };
        }
    }

    private async Task<Guid?> AnyKitsAsync()
    {
        await using var db = studio.Db();
        var left = await db.KitLots.Where(k => k.Left > 0).OrderBy(k => k.Code).Select(k => k.Id).ToListAsync();
        return left.Count == 0 ? null : left[random.Next(left.Count)];
    }

    /// <summary>Boxes went into kits or came back out of them: the model follows the ledger by the request.</summary>
    private async Task PackagingMovedAsync(Guid requestId)
    {
        await using var db = studio.Db();
        foreach (var movement in await db.Movements.Where(m => m.RequestId == requestId).OrderBy(m => m.Id).Select(m => new { m.LotId, m.Id, m.Change }).ToListAsync())
        {
            Move(_shelf.Single(l => l.Id == movement.LotId), movement.Change, movement.Id);
        }
    }

    private async Task<T?> GoodsAsync<T>(string what, Task<Outcome<T>> act)
        where T : class
    {
        if (!Tally(await act, out var value))
        {
            return null;
        }

        _acts[what] = _acts.GetValueOrDefault(what) + 1;
        return value;
    }
}
