using System.Globalization;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What must be known of a material to receive it.</summary>
/// <param name="Missing">Papers a new lot would be without.</param>
/// <param name="LastUnitPrice">Price less discount of the last delivery, per kg or piece; null when none was posted.</param>
internal sealed record MaterialFacts(
    Guid Id, string Name, MaterialKind Kind, StockUnit StockedIn, decimal? Density, int? ShelfLifeDays,
    IReadOnlyList<PaperKind> Missing, decimal? LastUnitPrice)
{
    public static async Task<Dictionary<Guid, MaterialFacts>> LoadAsync(StudioDb db, IEnumerable<Guid> materialIds, CancellationToken cancel)
    {
        var ids = materialIds.Distinct().ToArray();
        var materials = await db.Materials.AsNoTracking().Where(m => ids.Contains(m.Id)).ToListAsync(cancel);
        var papers = await LotPapers.LoadAsync(db, ids, cancel);
        var prices = await (
            from line in db.DeliveryLines
            join delivery in Inventory.Deliveries.Standing(db) on line.DeliveryId equals delivery.Id
            where ids.Contains(line.MaterialId)
            orderby delivery.ReceivedOn descending, delivery.PostedAt descending, line.Position descending
            select new { line.MaterialId, Value = line.Price - line.Discount, line.Quantity }).ToListAsync(cancel);
        var last = prices.GroupBy(p => p.MaterialId).ToDictionary(g => g.Key, g => g.First());
        return materials.ToDictionary(m => m.Id, m => new MaterialFacts(
            m.Id, m.Name, m.Kind, m.StockedIn, m.Density, m.ShelfLifeDays, papers.Missing(m.Id, m.RequiredPapers, null),
            last.TryGetValue(m.Id, out var price) ? DeliverySums.UnitPrice(price.Value, new StockAmount(price.Quantity, m.StockedIn)) : null));
    }
}

/// <summary>The sums of an invoice, worked out the same way for the page and for posting.</summary>
internal static class DeliverySums
{
    private const int ConfirmedDecimals = 6;

    /// <summary>Per kg, or per piece.</summary>
    public static decimal UnitPrice(decimal value, StockAmount stock) =>
        stock.Unit == StockUnit.Gram ? value * AmountUnits.Factor(AmountUnit.Kilogram) / stock.Display : value / stock.Display;

    public static ConversionResult IntoStock(DeliveryLineTyped line, MaterialFacts material) =>
        AmountConversion.ToStock(line.Quantity, line.Unit, material.StockedIn, DensityOf(line, material));

    public static Density? DensityOf(DeliveryLineTyped line, MaterialFacts material) =>
        Density.WherePossible(line.Density ?? material.Density);

    /// <summary>Why the amount cannot be taken into stock, in words for the line; null when it can.</summary>
    public static string? WhyNot(ConversionResult result) => result switch
    {
        ConversionResult.NeedsDensity needs => $"{needs.Why} Type the density from the sheet, or the amount by weight.",
        ConversionResult.WrongKind wrong => wrong.Why,
        ConversionResult.OutOfRange range => range.Why,
        _ => null,
    };

    public static InvoiceLine Invoice(DeliveryLineTyped line, StockAmount stock) =>
        new(line.Price, line.GrossKg, line.Duty, line.Surcharge, line.Discount, stock.Display);

    /// <summary>The question a far price raises; null when it is near, is the first one, or was confirmed at just this price.</summary>
    public static PriceAsked? Question(int index, DeliveryLineTyped line, MaterialFacts material, StockAmount stock)
    {
        if (material.LastUnitPrice is not { } last)
        {
            return null;
        }

        var density = DensityOf(line, material);
        var price = UnitPrice(line.Price - line.Discount, stock);
        return PriceCheck.Compare(last, price, line.Unit, density) is { } question && line.ConfirmedUnitPrice != Confirmable(price)
            ? Ask(index, line, material, question, density)
            : null;
    }

    /// <summary>The answer as it stays with the line; null when nothing was asked.</summary>
    public static string? Answer(DeliveryLineTyped line, MaterialFacts material, StockAmount stock)
    {
        var price = UnitPrice(line.Price - line.Discount, stock);
        var per = Per(material.StockedIn);
        return line.ConfirmedUnitPrice is not null && material.LastUnitPrice is { } last && PriceCheck.Compare(last, price) is not null
            ? $"{AmountWords.MoneyInFull(Confirmable(price))}{per} against {AmountWords.MoneyInFull(Confirmable(last))}{per} before: kept as typed"
            : null;
    }

    private static decimal Confirmable(decimal unitPrice) => decimal.Round(unitPrice, ConfirmedDecimals);

    private static string Per(StockUnit unit) => unit == StockUnit.Gram ? "/kg" : " each";

    private static PriceAsked Ask(int index, DeliveryLineTyped line, MaterialFacts material, PriceQuestion question, Density? density)
    {
        var per = Per(material.StockedIn);
        var typed = $"{QuantityFormat.Editable(line.Quantity, CultureInfo.CurrentCulture)} {AmountUnits.Symbol(line.Unit)}";
        var away = QuantityFormat.Percent(Math.Abs(question.FractionAway), CultureInfo.CurrentCulture, 0);
        var first = $"{typed} of {material.Name} for {AmountWords.Money(line.Price - line.Discount)} is {AmountWords.Money(question.NewUnitPrice)}{per} before freight, "
            + $"{away} % {(question.IsBelow ? "below" : "above")} the last price, {AmountWords.Money(question.LastUnitPrice)}{per}.";
        return question.FitsAs is not { } fits
            ? new PriceAsked(index, material.Name, Confirmable(question.NewUnitPrice), typed, null, null, first)
            : new PriceAsked(index, material.Name, Confirmable(question.NewUnitPrice), typed, fits.Unit, Weight(line, fits.Unit, density), $"{first} {Other(line, fits, density, per)}");
    }

    private static string Other(DeliveryLineTyped line, PriceReading fits, Density? density, string per)
    {
        var at = AmountUnits.IsVolume(fits.Unit) && density is { } known
            ? $" at {QuantityFormat.Editable(known.GramsPerMillilitre, CultureInfo.CurrentCulture)} g/mL"
            : "";
        return $"If the invoice says {QuantityFormat.Editable(line.Quantity, CultureInfo.CurrentCulture)} {AmountUnits.Symbol(fits.Unit)}, that is "
            + $"{Weight(line, fits.Unit, density)}{at} and {AmountWords.Money(fits.UnitPrice)}{per}.";
    }

    private static string Weight(DeliveryLineTyped line, AmountUnit unit, Density? density) =>
        AmountConversion.ToStock(line.Quantity, unit, StockUnit.Gram, density) is ConversionResult.Converted read
            ? $"{QuantityFormat.Number(read.Exact / AmountUnits.Factor(AmountUnit.Kilogram), CultureInfo.CurrentCulture, 2)} kg"
            : "";
}

/// <summary>A line whose price is far from the last one, with both readings in words.</summary>
/// <param name="Line">Index of the line, from 0.</param>
/// <param name="UnitPrice">To put into <see cref="DeliveryLineTyped.ConfirmedUnitPrice"/> when it is right as typed.</param>
/// <param name="AsTyped">"25 kg".</param>
/// <param name="FitsAs">The unit that would make the price fit; null when none does.</param>
/// <param name="FitsWeight">What it weighs then, "19.75 kg".</param>
public sealed record PriceAsked(int Line, string Material, decimal UnitPrice, string AsTyped, AmountUnit? FitsAs, string? FitsWeight, string Sentence);

/// <summary>One price or more is far from the last one: each is to be confirmed or mended.</summary>
public sealed record PriceLooksFar(IReadOnlyList<PriceAsked> Questions) : Refusal
{
    public override string Happened => string.Join(' ', Questions.Select(q => q.Sentence));
    public override string Kept => "Nothing is posted until you answer.";
    public override string ToDo => Questions.Count == 1 ? "Say which reading is right." : "Say for each line which reading is right.";
}
