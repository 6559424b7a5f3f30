namespace MakerStudio.Services.Inventory;

/// <summary>A purchase order as it is being typed: text stays text until it is sent, so that nothing typed is lost.</summary>
public sealed record OrderDraft
{
    public Guid? SupplierId { get; set; }
    public DateOnly? ExpectedOn { get; set; }
    public string? Freight { get; set; }

    /// <summary>Percent, on goods and freight.</summary>
    public string? Tax { get; set; }
    public string? Note { get; set; }
    public List<OrderLineDraft> Lines { get; set; } = [];
}

/// <summary>One line of it. The quantity may carry its unit: "25 L", "4.4 lb".</summary>
public sealed record OrderLineDraft
{
    public Guid Key { get; set; } = Guid.CreateVersion7();
    public Guid? MaterialId { get; set; }
    public string? Quantity { get; set; }

    /// <summary>Symbol of the unit that stands in the field; a unit typed behind the number comes before it.</summary>
    public string? Unit { get; set; } = "kg";

    /// <summary>Per that unit.</summary>
    public string? UnitPrice { get; set; }

    /// <summary>Percent of the line.</summary>
    public string? Discount { get; set; }
}

/// <summary>What a draft says once its text is read, and which fields could not be read.</summary>
public sealed record OrderReading(SendOrder Request, IReadOnlyList<FieldProblem> Problems);

/// <summary>Reads the text of a draft into a request, in the marks of the culture that is set.</summary>
public static class ReadOrder
{
    private const int PercentDecimals = 3;
    private const decimal PercentOfWhole = 100m;

    public static OrderReading From(OrderDraft draft)
    {
        var problems = new List<FieldProblem>();
        var request = new SendOrder
        {
            SupplierId = draft.SupplierId ?? Guid.Empty,
            ExpectedOn = draft.ExpectedOn,
            Freight = TypedNumbers.Number(draft.Freight, nameof(draft.Freight), TypedNumbers.MoneyDecimals, problems) ?? 0m,
            TaxRate = Fraction(draft.Tax, nameof(draft.Tax), problems),
            Note = TypedNumbers.Tidy(draft.Note),
        };
        for (var i = 0; i < draft.Lines.Count; i++)
        {
            request.Lines.Add(Line(draft.Lines[i], $"Lines[{i}].", problems));
        }

        return new OrderReading(request, problems);
    }

    private static OrderLineTyped Line(OrderLineDraft line, string path, List<FieldProblem> problems)
    {
        var (quantity, unit) = TypedNumbers.Amount(line.Quantity, line.Unit, path + nameof(line.Quantity), problems);
        return new OrderLineTyped
        {
            MaterialId = line.MaterialId ?? Guid.Empty,
            Quantity = quantity ?? 0m,
            Unit = unit,
            UnitPrice = TypedNumbers.Number(line.UnitPrice, path + nameof(line.UnitPrice), TypedNumbers.MoneyDecimals, problems)
                ?? (string.IsNullOrWhiteSpace(line.UnitPrice) ? null : 0m),
            Discount = Fraction(line.Discount, path + nameof(line.Discount), problems),
        };
    }

    private static decimal Fraction(string? text, string field, List<FieldProblem> problems) =>
        (TypedNumbers.Number(text, field, PercentDecimals, problems) ?? 0m) / PercentOfWhole;
}
