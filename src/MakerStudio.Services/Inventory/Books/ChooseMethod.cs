using System.Globalization;
using FluentValidation;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Fixes the valuation method for a financial year and those after it.</summary>
public sealed record ChooseMethod : StudioRequest
{
    /// <summary>Any day of the year from which on it holds.</summary>
    public DateOnly? YearOf { get; set; }
    public ValuationMethod Method { get; set; }
}

public sealed class ChooseMethodValidator : AbstractValidator<ChooseMethod>
{
    public ChooseMethodValidator()
    {
        RuleFor(r => r.YearOf).NotNull().WithMessage("Choose the year.");
        RuleFor(r => r.Method).IsInEnum();
    }
}

public sealed partial class Books
{
    private static readonly ChooseMethodValidator MethodShape = new();

    public Task<Outcome<Nothing>> ChooseMethodAsync(Actor actor, ChooseMethod request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, MethodShape, async command =>
        {
            await LockAsync(command, cancel);
            var basis = await BasisAsync(command.Db, store.Clock, cancel);
            var year = basis.Years.Of(request.YearOf!.Value);
            if (MethodOfYears.WhyNot(year, request.Method, basis.Years.Of(command.Today), basis.Choices) is { } why)
            {
                return new Because(why);
            }

            if (basis.Choices.Any(c => c.First == year.First))
            {
                return new Because($"A method was chosen for the year from {AmountWords.Day(year.First)} already.", "Choose another from a later year on.");
            }

            command.Db.BookMethods.Add(new BookMethod { First = year.First, Method = request.Method, PersonId = command.PersonId, At = command.Now });
            command.Record("books", null, $"Books from {AmountWords.Day(year.First)}: {BookWords.Method(request.Method).ToLower(CultureInfo.CurrentCulture)}", Topics.Books);
            return (Outcome<Nothing>)Nothing.Value;
        }, ownersOnly: true, cancel);

    /// <summary>One change of the books at a time, until the transaction ends.</summary>
    private static Task LockAsync(Command command, CancellationToken cancel) =>
        command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('books'))", cancel);
}

public static class BookWords
{
    public static string Method(ValuationMethod method) => method switch
    {
        ValuationMethod.Fifo => "First in, first out",
        ValuationMethod.WeightedAverage => "Weighted average of the year",
        ValuationMethod.MovingAverage => "Moving average",
        _ => "Specific lot",
    };
}
