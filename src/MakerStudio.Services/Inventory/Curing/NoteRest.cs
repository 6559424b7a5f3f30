using System.Globalization;
using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Where a resting batch stands now, and what it went through there: heat, cold, light.</summary>
public sealed record NoteRest : StudioRequest
{
    public Guid BatchId { get; set; }
    public string? Place { get; set; }

    /// <summary>°C outside what the batch should have; with how long.</summary>
    public decimal? Celsius { get; set; }
    public decimal? Hours { get; set; }
    public string? Note { get; set; }
}

public sealed class NoteRestValidator : AbstractValidator<NoteRest>
{
    public NoteRestValidator()
    {
        RuleFor(r => r.Place).MaximumLength(80).WithMessage("The place has room for 80 letters.");
        RuleFor(r => r.Note).MaximumLength(500).WithMessage("Keep the note to 500 letters.");
        RuleFor(r => r.Celsius).InclusiveBetween(-30, 60).WithMessage("Between −30 and 60 °C.");
        RuleFor(r => r.Hours).InclusiveBetween(0, 10_000).WithMessage("Hours are from 0 to 10,000.");
        RuleFor(r => r.Celsius).NotNull().When(r => r.Hours is not null).WithMessage("Give the temperature that it had for so long.");
    }
}

public sealed partial class CureShelf
{
    private static readonly NoteRestValidator NoteRestShape = new();

    public Task<Outcome<Nothing>> NoteAsync(Actor actor, NoteRest request, CancellationToken cancel = default) =>
        store.RunAsync<NoteRest, Nothing>(actor, request, NoteRestShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State is not (BatchState.Resting or BatchState.Ready))
            {
                return new NotResting(batch.Code, batch.State);
            }

            var place = Trimmed(request.Place);
            var moved = place is not null && place != batch.Place;
            var note = Trimmed(request.Note);
            if (!moved && request.Celsius is null && note is null)
            {
                return new Because("There is nothing new in this note.", "Give a place, a temperature or a few words.");
            }

            batch.Place = place ?? batch.Place;
            command.Record("batch", batch.Id, SayNote(batch.Code, moved ? place : null, request, note), Topics.Batches);
            return Nothing.Value;
        }, cancel: cancel);

    /// <summary>"RS-2 moved to cupboard 2; 9 °C for 6 h; door stood open".</summary>
    private static string SayNote(string code, string? movedTo, NoteRest request, string? note)
    {
        static string Plain(decimal value) => value.ToString("0.##", CultureInfo.CurrentCulture).Replace('-', '−');
        var heat = request.Celsius is { } celsius ? $"{Plain(celsius)} °C" + (request.Hours is { } hours ? $" for {Plain(hours)} h" : "") : null;
        var parts = new[] { movedTo is null ? null : $"moved to {movedTo}", heat, note };
        return $"{code} {string.Join("; ", parts.Where(p => p is not null))}";
    }

    private static Task<List<RestNote>> NotesAsync(StudioDb db, Guid batchId, CancellationToken cancel) => (
        from act in db.Acts
        join person in db.Users on act.PersonId equals person.Id
        where act.Subject == "batch" && act.SubjectId == batchId && act.Command == nameof(NoteRest)
        orderby act.At
        select new RestNote(act.At, act.What, person.Initials)).ToListAsync(cancel);
}

public sealed record RestNote(DateTimeOffset At, string What, string Initials);
