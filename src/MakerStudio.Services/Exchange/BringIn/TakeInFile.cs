using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>Brings in all that a file says, or nothing.</summary>
public sealed record TakeInFile : StudioRequest
{
    public Guid FileId { get; set; }

    /// <summary>"." or ",": the mark before decimals, where the file does not show it by itself.</summary>
    public string? DecimalMark { get; set; }
}

public sealed class TakeInFileValidator : AbstractValidator<TakeInFile>
{
    public TakeInFileValidator() => RuleFor(r => r.DecimalMark).Must(m => m is null or "." or ",").WithMessage("The mark before decimals is a point or a comma.");
}

/// <param name="BroughtIn">In words: "23 materials".</param>
public sealed record FileTakenIn(BringInKind Kind, string BroughtIn, int Skipped);

/// <summary>Some rows cannot be brought in.</summary>
public sealed record RowsRefused(int Refused, int Lines, long FirstLine, string FirstReason) : Refusal
{
    public override string Happened => $"{Refused:#,0} of {Lines:#,0} rows {(Refused == 1 ? "is" : "are")} refused; the first is line {FirstLine:#,0}. {FirstReason}";
    public override string Kept => "Nothing of the file was brought in.";
    public override string ToDo => "Mend these rows in the file and choose it again.";
}

public sealed partial class BroughtFiles
{
    private static readonly TakeInFileValidator TakeInShape = new();

    public Task<Outcome<FileTakenIn>> TakeInAsync(Actor actor, TakeInFile request, CancellationToken cancel = default) =>
        store.RunAsync<TakeInFile, FileTakenIn>(actor, request, TakeInShape, async command =>
        {
            // One file after the other: two at once could name the same formula, supplier's lot or code.
            await command.Db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('files brought in'))", cancel);
            if (await command.Db.BroughtFiles.SingleOrDefaultAsync(f => f.Id == request.FileId, cancel) is not { } file)
            {
                return new NotFound("This file");
            }

            if (await WhyNotAsync(command.Db, file, cancel) is { } refusal)
            {
                return refusal;
            }

            var typed = await TypedAsync(command.Db, file, request.DecimalMark?[0], cancel);
            if (typed.Problems.Count > 0)
            {
                return new FileUnreadable(typed.Problems);
            }

            var found = await CheckAsync(command.Db, file.Kind, typed, command, cancel);
            if (found.Rows.FirstOrDefault(r => r.Fate == RowFate.Refused) is { } first)
            {
                return new RowsRefused(found.Rows.Count(r => r.Fate == RowFate.Refused), found.Rows.Count, first.Cells.Line, first.Why!);
            }

            if (found.Rows.All(r => r.Fate == RowFate.Skipped))
            {
                return new Because("Every row of this file is here already, or has nothing left.", "There is nothing to bring in.");
            }

            await found.PutAsync(command, cancel);
            (file.BroughtInAt, file.BroughtInById, file.BroughtIn) = (command.Now, command.PersonId, found.Makes);
            command.Record("file", file.Id, $"Brought in {found.Makes} from the file {file.Name}", Topics.Materials);
            return new FileTakenIn(file.Kind, found.Makes, found.Rows.Count(r => r.Fate == RowFate.Skipped));
        }, cancel: cancel);

    /// <summary>A file of lots counts once: brought in a second time, jars without a code would stand there twice.</summary>
    private static async Task<Because?> WhyNotAsync(StudioDb db, BroughtFile file, CancellationToken cancel)
    {
        var before = file.BroughtInAt ?? (file.Kind == BringInKind.Lots
            ? await db.BroughtFiles.Where(f => f.Kind == BringInKind.Lots && f.BroughtInAt != null && f.Sha256 == file.Sha256).Select(f => f.BroughtInAt).FirstOrDefaultAsync(cancel) : null);
        return before is { } at ? new Because("This very file was brought in before.", $"It was on {Inventory.AmountWords.Day(DateOnly.FromDateTime(at.UtcDateTime))}. What is wrong with it is mended where it stands.") : null;
    }
}
