using FluentValidation;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>A line as it stands in the form; the place in the list is the order of addition.</summary>
public sealed record KeptLine
{
    public Guid LineId { get; set; } = Guid.CreateVersion7();
    public Guid MaterialId { get; set; }

    /// <summary>Null is "the rest", or nothing typed yet.</summary>
    public decimal? Amount { get; set; }
    public LineBasis Basis { get; set; }
    public string? Method { get; set; }
}

/// <summary>Keeps a draft exactly as typed, whether it adds up or not.</summary>
public sealed record KeepDraft : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>The version the form was opened with, or the last keep answered with.</summary>
    public uint Version { get; set; }
    public List<KeptLine> Lines { get; set; } = [];
    public string? Why { get; set; }
    public string? Method { get; set; }
    public int CureMinHours { get; set; }
    public int CureIdealHours { get; set; }
    public int? CureLatestHours { get; set; }

    /// <summary>Percent of target; null takes the studio's.</summary>
    public decimal? TolerancePercent { get; set; }
    public decimal ExpectedLossPercent { get; set; }
}

public sealed class KeepDraftValidator : AbstractValidator<KeepDraft>
{
    private const decimal LargestAmount = 1_000_000_000m;
    private const int MostDecimals = 12;

    public KeepDraftValidator()
    {
        RuleFor(r => r.Lines).Must(l => l.Count <= Versions.MostLines).WithMessage("A formula has at most 100 lines. Make a pre-blend of some.");
        RuleFor(r => r.Lines).Must(l => l.Select(x => x.LineId).Distinct().Count() == l.Count).WithMessage("Two lines bear one id. Reload the page.");
        RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.Amount).InclusiveBetween(0, LargestAmount).WithMessage("An amount is from 0 to 1,000,000,000.");
            line.RuleFor(l => l.Amount).Must(a => a is null || a.Value.Scale <= MostDecimals).WithMessage("An amount has at most 12 decimals.");
            line.RuleFor(l => l.Basis).IsInEnum().WithMessage("Say what the amount is counted in.");
            line.RuleFor(l => l.Method).SeveralLines("The note of a line", 400);
        });
        RuleFor(r => r.Why).OneLine("The reason", 200);
        RuleFor(r => r.Method).SeveralLines("The method", 8000);
        RuleFor(r => r.CureMinHours).InclusiveBetween(0, Versions.LongestRestHours).WithMessage("The shortest rest is from 0 h to two years.");
        RuleFor(r => r.CureIdealHours).Must((r, ideal) => ideal >= r.CureMinHours && ideal <= Versions.LongestRestHours)
            .WithMessage("The ideal rest is not shorter than the shortest and at most two years.");
        RuleFor(r => r.CureLatestHours).Must((r, latest) => latest is null || (latest >= r.CureIdealHours && latest <= Versions.LongestRestHours))
            .WithMessage("The latest rest is not shorter than the ideal and at most two years.");
        RuleFor(r => r.TolerancePercent).InclusiveBetween(0, 20).WithMessage("Tolerance is from 0 to 20 % of the target.");
        RuleFor(r => r.ExpectedLossPercent).InclusiveBetween(0, Scaling.HighestLoss * 100m).WithMessage("The expected loss is from 0 to 50 %.");
    }
}

/// <param name="Version">To send with the next keep.</param>
public sealed record DraftKept(uint Version, DateTimeOffset KeptAt);

/// <summary>Somebody kept the same draft since the form was opened; theirs comes along, so that both can be looked at.</summary>
public sealed record StaleDraft(string ChangedBy, VersionRow Theirs) : Refusal
{
    public override string Happened => $"{ChangedBy} changed this draft while you had it open.";
    public override string Kept => "Theirs is kept. Yours is still on this page.";
    public override string ToDo => "Look at both, then take theirs or keep yours over it.";
}

/// <summary>A released version does not change any more.</summary>
public sealed record AlreadyReleased(int Number) : Refusal
{
    public override string Happened => $"v{Number} is released and frozen.";
    public override string ToDo => "Change it as the next version.";
}

public sealed partial class Versions
{
    internal static readonly KeepDraftValidator KeepShape = new();

    public Task<Outcome<DraftKept>> KeepAsync(Actor actor, KeepDraft request, CancellationToken cancel = default) =>
        store.RunAsync<KeepDraft, DraftKept>(actor, request, KeepShape, async command =>
        {
            var version = await FormulaRows.LockVersionAsync(command.Db, request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This draft");
            }

            if (await WhyNotKeepAsync(command, version, request, cancel) is { } refusal)
            {
                return refusal;
            }

            PutLines(command.Db, version, request.Lines);
            version.Why = Tidy(request.Why);
            version.Method = request.Method;
            version.CureMinHours = request.CureMinHours;
            version.CureIdealHours = request.CureIdealHours;
            version.CureLatestHours = request.CureLatestHours;
            version.TolerancePercent = request.TolerancePercent;
            version.ExpectedLossPercent = request.ExpectedLossPercent;
            version.KeptAt = command.Now;
            // The row's version must move even when only lines changed within one tick of the clock.
            command.Db.Entry(version).Property(v => v.KeptAt).IsModified = true;
            command.Record("formula version", version.Id, $"Kept the draft of {version.Formula!.Name} v{version.Number}", Topics.Formulas);
            await command.Db.SaveChangesAsync(cancel);
            return new DraftKept(version.Version, version.KeptAt);
        }, cancel: cancel);

    private static async Task<Refusal?> WhyNotKeepAsync(Command command, FormulaVersion version, KeepDraft request, CancellationToken cancel)
    {
        if (await WhyNotEditAsync(command, version, request.Version, cancel) is { } refusal)
        {
            return refusal;
        }

        var db = command.Db;
        var lineIds = request.Lines.Select(l => l.LineId).ToArray();
        if (await db.FormulaLines.AnyAsync(l => lineIds.Contains(l.Id) && l.FormulaVersionId != version.Id, cancel))
        {
            return new Because("A line of this form belongs to another formula.", "Reload the page; the draft is there as it was last kept.");
        }

        var materialIds = request.Lines.Select(l => l.MaterialId).Distinct().ToArray();
        var weighed = await db.Materials.CountAsync(m => materialIds.Contains(m.Id) && m.StockedIn == StockUnit.Gram, cancel);
        return weighed == materialIds.Length ? null
            : new Because("A line names a material that is not weighed here.", "Choose a material that is stocked in grams.");
    }

    /// <summary>Why a locked version may not be changed from the form that was opened with <paramref name="expected"/>.</summary>
    private static async Task<Refusal?> WhyNotEditAsync(Command command, FormulaVersion version, uint expected, CancellationToken cancel)
    {
        if (version.State == FormulaState.Released)
        {
            return new AlreadyReleased(version.Number);
        }

        if (version.Formula!.ArchivedAt is not null)
        {
            return new PutAwayFirst(version.Formula.Name);
        }

        return version.Version == expected ? null : new StaleDraft(
            await ChangedByAsync(command, version.Id, cancel),
            await FormulaRows.Versions(command.Db, v => v.Id == version.Id).AsNoTracking().SingleAsync(cancel));
    }

    private static async Task<string> ChangedByAsync(Command command, Guid versionId, CancellationToken cancel)
    {
        var last = await command.Db.Acts.Where(a => a.Subject == "formula version" && a.SubjectId == versionId)
            .OrderByDescending(a => a.Id)
            .Select(a => new { a.PersonId, Name = command.Db.Users.Where(u => u.Id == a.PersonId).Select(u => u.DisplayName).FirstOrDefault() })
            .FirstOrDefaultAsync(cancel);
        return last is null ? "Somebody" : last.PersonId == command.PersonId ? "You, on another page," : last.Name ?? "Somebody";
    }

    private static void PutLines(StudioDb db, FormulaVersion version, List<KeptLine> lines)
    {
        var had = version.Lines.ToDictionary(l => l.Id);
        foreach (var gone in had.Values.Where(l => lines.All(k => k.LineId != l.Id)).ToArray())
        {
            db.FormulaLines.Remove(gone);
        }

        foreach (var (kept, index) in lines.Select((l, i) => (l, i)))
        {
            if (!had.TryGetValue(kept.LineId, out var line))
            {
                line = new FormulaLine { Id = kept.LineId, FormulaVersionId = version.Id };
                db.FormulaLines.Add(line);
            }

            line.Position = index + 1;
            line.MaterialId = kept.MaterialId;
            line.Amount = kept.Amount;
            line.Basis = kept.Basis;
            line.Method = Tidy(kept.Method);
        }
    }

    private static string? Tidy(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
