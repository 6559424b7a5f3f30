using FluentValidation;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

public sealed record SizePart
{
    public Guid MaterialId { get; set; }
    public int CountPerUnit { get; set; } = 1;
}

/// <summary>A size the formula is sold in: what the pack holds by its label, a little more, and what it is packed in.</summary>
public sealed record AddSize : StudioRequest
{
    public Guid FormulaId { get; set; }
    public string Name { get; set; } = "";

    /// <summary>mL, or g for what is sold by weight.</summary>
    public decimal Nominal { get; set; }

    /// <summary>Grams filled beyond the nominal content.</summary>
    public decimal OverfillGrams { get; set; }
    public List<SizePart> Parts { get; set; } = [];
}

public sealed class AddSizeValidator : AbstractValidator<AddSize>
{
    /// <summary>Largest pack taken, mL or g; own bound.</summary>
    private const decimal LargestPack = 100_000m;
    private const int MostParts = 20;

    public AddSizeValidator()
    {
        RuleFor(r => r.Name).OneLine("The size", 80);
        RuleFor(r => r.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("The size needs a name, such as 100 mL bottle.");
        RuleFor(r => r.Nominal).Must(n => n is > 0 and <= LargestPack && n.Scale <= 3).WithMessage("A pack holds above 0 and up to 100,000 mL or g, to 3 decimals.");
        RuleFor(r => r.OverfillGrams).Must(o => o is >= 0 and <= LargestPack && o.Scale <= 3).WithMessage("The overfill is 0 g or more, to 3 decimals.");
        RuleFor(r => r.OverfillGrams).Must((r, o) => o <= r.Nominal).WithMessage("The overfill is more than the pack holds.");
        RuleFor(r => r.Parts).Must(p => p.Count <= MostParts).WithMessage("A size has at most 20 packaging parts.");
        RuleFor(r => r.Parts).Must(p => p.All(x => x.CountPerUnit is >= 1 and <= 1000)).WithMessage("Each packaging part is used from 1 to 1,000 times a pack.");
        RuleFor(r => r.Parts).Must(p => p.Select(x => x.MaterialId).Distinct().Count() == p.Count).WithMessage("A packaging part stands in the list twice. Put its count together.");
    }
}

public sealed record SizeAdded(Guid SizeId);

/// <summary>Takes a size out of use. Batches planned in it keep it.</summary>
public sealed record RetireSize : StudioRequest
{
    public Guid SizeId { get; set; }
}

/// <summary>The sizes of a formula.</summary>
public sealed class Sizes(StudioStore store)
{
    private static readonly AddSizeValidator AddShape = new();

    public Task<Outcome<SizeAdded>> AddAsync(Actor actor, AddSize request, CancellationToken cancel = default) =>
        store.RunAsync<AddSize, SizeAdded>(actor, request, AddShape, async command =>
        {
            var formula = await command.Db.Formulas.Include(f => f.Sizes).SingleOrDefaultAsync(f => f.Id == request.FormulaId, cancel);
            if (formula is null)
            {
                return new NotFound("This formula");
            }

            var name = request.Name.Trim();
            if (formula.Sizes.Any(s => s.RetiredAt is null && string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase)))
            {
                return new Because($"{formula.Name} already has a size called {name}.", "Give it another name, or retire that one first.");
            }

            var ids = request.Parts.Select(p => p.MaterialId).ToArray();
            var counted = await command.Db.Materials
                .CountAsync(m => ids.Contains(m.Id) && m.StockedIn == StockUnit.Each && m.ArchivedAt == null, cancel);
            if (counted != ids.Length)
            {
                return new Because("One of the packaging parts is not counted in pieces, or is put away.", "Choose packaging from the storeroom.");
            }

            var byVolume = ProductKinds.Get(formula.ProductKind).NominalUnit == AmountUnit.Millilitre;
            var size = new FormulaSize
            {
                FormulaId = formula.Id, Name = name,
                NominalMillilitres = byVolume ? request.Nominal : null,
                NominalMilligrams = byVolume ? null : Mass.FromGrams(request.Nominal).Milligrams,
                OverfillMilligrams = Mass.FromGrams(request.OverfillGrams).Milligrams,
            };
            size.Parts.AddRange(request.Parts.Select(p => new FormulaSizePart { MaterialId = p.MaterialId, CountPerUnit = p.CountPerUnit }));
            command.Db.FormulaSizes.Add(size);
            command.Record("formula", formula.Id, $"Added the size {name} to {formula.Name}", Topics.Formulas);
            return new SizeAdded(size.Id);
        }, cancel: cancel);

    public Task<Outcome<Nothing>> RetireAsync(Actor actor, RetireSize request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, null, async command =>
        {
            var size = await command.Db.FormulaSizes.SingleOrDefaultAsync(s => s.Id == request.SizeId, cancel);
            if (size is null)
            {
                return new NotFound("This size");
            }

            size.RetiredAt ??= command.Now;
            command.Record("formula", size.FormulaId, $"Retired the size {size.Name}", Topics.Formulas);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);
}
