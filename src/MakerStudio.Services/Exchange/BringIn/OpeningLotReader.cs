using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>Reads one row of a file of lots and says what is wrong with it.</summary>
internal sealed class OpeningLotReader(CsvCells cells, CheckContext context, LotsHere here)
{
    private const decimal MostMoney = 10_000_000m;
    private const int LongestCode = 20;
    private const int LongestText = 60;

    private static readonly (string, LotStatus)[] States = [.. Enum.GetValues<LotStatus>().Select(s => (LotWords.Status(s), s))];

    private readonly string? _code = LotsHere.CodeOf(cells);

    /// <summary>Why nothing is done about the row; null for a new one.</summary>
    public string? Skip { get; private set; }

    /// <summary>What the row calls itself, where nothing more can be said.</summary>
    public string Names => string.Join(", ", new[] { _code, cells.Text(LotTable.Material), cells.Text(LotTable.Amount) }.OfType<string>());

    /// <summary>The lot, or null where the row is refused or there is nothing of it.</summary>
    public OpeningLot? Read()
    {
        if (IsUsedUp())
        {
            Skip = "Nothing is left of it, so there is nothing to bring in.";
            return null;
        }

        if (here.Material(cells.Text(LotTable.Material)) is not { } material)
        {
            cells.Refuse(LotTable.Material, cells.Text(LotTable.Material) is { } name ? $"There is no material “{name}” in the storeroom. Bring the materials in first." : "No material is named.");
            return null;
        }

        JudgeCode(material);
        if (Skip is not null)
        {
            return null;
        }

        var density = cells.Number(LotTable.DensityColumn);
        if (density is { } typed && !Density.IsPossible(typed))
        {
            cells.Refuse(LotTable.DensityColumn, $"A density lies between {Density.Lowest} and {Density.Highest} g/mL. Sheets in kg/m³ need dividing by 1,000.");
            density = null;
        }

        var amount = AmountOf(material, density);
        var cost = CostOf(material);
        var (received, opened) = Days();
        var (status, reason) = StateOf(material);
        var expires = cells.Date(LotTable.Expires);
        var retest = cells.Date(LotTable.Retest) ?? (expires is null && material.ShelfLifeDays is { } days ? received?.AddDays(days) : null);
        var (supplier, supplierLot, shelf, tare) = (OneLine(LotTable.Supplier, 120), OneLine(LotTable.SupplierLot, LongestText), OneLine(LotTable.ShelfColumn, LongestText), TareOf());
        JudgeTwice(material, supplierLot);
        return cells.Problems.Count > 0 ? null : new OpeningLot(
            material, _code, amount!.Value, cost!.Value, status, reason, received!.Value, opened, expires, retest, supplier, supplierLot, density, tare, shelf);
    }

    private bool IsUsedUp() =>
        string.Equals(cells.Text(LotTable.State), LotTable.UsedUp, StringComparison.OrdinalIgnoreCase)
        || (cells.Text(LotTable.Amount) is { } text && QuantityText.Parse(text, new QuantityTextOptions(MaxDecimals: CsvCells.AnyDecimals)) is QuantityReading.Read { Value: 0 });

    private void JudgeCode(MaterialFacts material)
    {
        if (_code is null)
        {
            return;
        }

        if (_code.Length > LongestCode || !_code.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '/'))
        {
            cells.Refuse(LotTable.Lot, $"A code has at most {LongestCode} letters, digits, hyphens, points and strokes.");
        }
        else if (!here.Seen.TryAdd(_code, cells.Line))
        {
            cells.Refuse(LotTable.Lot, $"This code stands on line {here.Seen[_code]} too. Each jar has its own.");
        }
        else if (here.IsTaken(_code, out var of))
        {
            if (of == material.Id)
            {
                Skip = "This lot is here already. Its ledger says what is left; count it where that is not right.";
            }
            else
            {
                cells.Refuse(LotTable.Lot, of is null ? "A batch has this code. Give the lot another." : "A lot of another material has this code. Give it another.");
            }
        }
    }

    private StockAmount? AmountOf(MaterialFacts material, decimal? density)
    {
        if (cells.Quantity(LotTable.Amount, cells.Text(LotTable.Amount), mayBeBelowZero: true) is not { } read)
        {
            if (cells.Text(LotTable.Amount) is null)
            {
                cells.Refuse(LotTable.Amount, "Say how much there is.");
            }

            return null;
        }

        var word = cells.Text(LotTable.UnitColumn);
        var unit = AmountUnits.Parse(read.Unit ?? word);
        if (read.Value < 0 || unit is null || (read.Unit is not null && word is not null && AmountUnits.Parse(word) != unit))
        {
            cells.Refuse(
                read.Value < 0 ? LotTable.Amount : LotTable.UnitColumn,
                read.Value < 0 ? "What is on the shelf is above zero."
                : unit is not null ? $"The amount says {AmountUnits.Symbol(unit.Value)}, the unit says {word}. Keep one."
                : word is null && read.Unit is null ? "Say the unit: g, kg, mL, L or each."
                : $"“{read.Unit ?? word}” is none of: {string.Join(", ", AmountUnits.All.Select(AmountUnits.Symbol))}.");
            return null;
        }

        switch (AmountConversion.ToStock(read.Value, unit.Value, material.StockedIn, Density.WherePossible(density ?? material.Density)))
        {
            case ConversionResult.Converted { Amount: var stock } result when !IsMetricMass(unit.Value) || stock.Display == result.Exact:
                return stock;
            case ConversionResult.Converted:
                cells.Refuse(LotTable.Amount, GramRules.TooFine);
                return null;
            case var not:
                cells.Refuse(LotTable.Amount, DeliverySums.WhyNot(not)!);
                return null;
        }
    }

    private static bool IsMetricMass(AmountUnit unit) => unit is AmountUnit.Kilogram or AmountUnit.Gram or AmountUnit.Milligram;

    /// <summary>Of one gram or one piece.</summary>
    private decimal? CostOf(MaterialFacts material)
    {
        var column = LotTable.Landed(context.Currency);
        var before = cells.Problems.Count;
        if (cells.Number(column) is not { } cost)
        {
            if (cells.Problems.Count == before)
            {
                cells.Refuse(column, "Say what it cost landed; 0 for what cost nothing.");
            }

            return null;
        }

        if (cost > MostMoney)
        {
            cells.Refuse(column, "That is more than can be kept.");
        }

        return material.StockedIn == StockUnit.Gram ? cost / AmountUnits.Factor(AmountUnit.Kilogram) : cost;
    }

    private (DateOnly? Received, DateOnly? Opened) Days()
    {
        var before = cells.Problems.Count;
        var (received, opened) = (cells.Date(LotTable.Received), cells.Date(LotTable.Opened));
        if (received is null && cells.Text(LotTable.Received) is null)
        {
            cells.Refuse(LotTable.Received, "Give the day it came.");
        }

        foreach (var (column, day) in new[] { (LotTable.Received, received), (LotTable.Opened, opened) })
        {
            if (day > context.Today)
            {
                cells.Refuse(column, $"{AmountWords.Day(day.Value)} is still to come.");
            }
        }

        if (cells.Problems.Count == before && opened < received)
        {
            cells.Refuse(LotTable.Opened, "It was opened before it came.");
        }

        return (received, opened);
    }

    /// <summary>As the file says, or by the papers. What is released without its papers, held or rejected needs its ground.</summary>
    private (LotStatus Status, string Reason) StateOf(MaterialFacts material)
    {
        var missing = material.Missing;
        var why = OneLine(LotTable.Why, LotReasonValidator.Longest);
        var said = cells.OneOf(LotTable.State, States);
        if (said is LotStatus.OnHold or LotStatus.Rejected && why is null)
        {
            cells.Refuse(LotTable.Why, $"Say why it is {LotWords.Status(said.Value).ToLowerInvariant()}.");
        }
        else if (said == LotStatus.Released && missing.Count > 0 && why is null)
        {
            cells.Refuse(LotTable.Why, $"It is without its {LotPapers.Words(missing)} here. Say on what ground it is released, or leave the state empty: it waits in quarantine.");
        }

        return said is { } status ? (status, why ?? (status == LotStatus.Released ? "Papers complete" : "In quarantine before")) : missing.Count > 0 ? (LotStatus.Quarantine, LotPapers.Words(missing) + " missing") : (LotStatus.Released, "Papers complete");
    }

    /// <summary>Two rows that say the same, or a supplier's lot that is here: without a code nobody knows whether that is one jar or two.</summary>
    private void JudgeTwice(MaterialFacts material, string? supplierLot)
    {
        if (_code is not null || cells.Problems.Count > 0)
        {
            return;
        }

        if (supplierLot is not null && here.CodeOf(material.Id, supplierLot) is { } known)
        {
            cells.Refuse(LotTable.SupplierLot, $"Lot {supplierLot} of this material is here as {known}. Take the row out, or give a second jar its own code.");
        }
        else if (!here.Seen.TryAdd(string.Join('\u001f', cells.Row.Cells), cells.Line))
        {
            cells.Refuse(LotTable.Lot, $"Line {here.Seen[string.Join('\u001f', cells.Row.Cells)]} says just the same. If there are two such jars, give each a code.");
        }
    }

    private long? TareOf()
    {
        var tare = cells.Number(LotTable.Tare);
        if (tare is > MostMoney || !GramRules.AreWhole(tare))
        {
            cells.Refuse(LotTable.Tare, tare > MostMoney ? "That is more than can be kept." : GramRules.TooFine);
            return null;
        }

        return tare is { } grams ? Mass.FromGrams(grams).Milligrams : null;
    }

    private string? OneLine(string column, int longest)
    {
        var text = cells.Text(column);
        if (text?.Length > longest)
        {
            cells.Refuse(column, $"At most {longest} characters are kept here.");
        }
        else if (text is not null && PlainText.WhyNot(text, severalLines: false) is { } why)
        {
            cells.Refuse(column, $"It {why}.");
        }

        return text;
    }
}
