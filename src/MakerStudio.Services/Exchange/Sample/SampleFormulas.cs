using MakerStudio.Core.Blending;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Services.Exchange;

/// <param name="Kind">Key of the product kind.</param>
internal sealed record SampleFormula(string Name, string Kind, IReadOnlyList<SampleVersion> Versions)
{
    public IReadOnlyList<SampleSize> Sizes { get; init; } = [];
}

/// <param name="DaysAgo">When it was written; it is released an hour later.</param>
internal sealed record SampleVersion(int DaysAgo, int Hour, bool ByBo, string Why, params SampleFormulaLine[] Lines)
{
    public string? Method { get; init; }

    /// <summary>Null keeps what the product kind starts with, as the next one.</summary>
    public int? CureMinHours { get; init; }
    public int? CureIdealHours { get; init; }

    /// <summary>As measured on the mixture, g/mL.</summary>
    public decimal? Density { get; init; }
    public bool StaysDraft { get; init; }
}

/// <param name="Amount">Null is the rest.</param>
internal sealed record SampleFormulaLine(string Material, decimal? Amount, LineBasis Basis, string? Method = null);

/// <param name="Nominal">mL, or g for what is sold by weight.</param>
internal sealed record SampleSize(string Name, decimal Nominal, decimal OverfillGrams, params (string Material, int Count)[] Parts);

/// <summary>Writes and releases the formulas of the sample studio, version by version.</summary>
internal sealed class SampleFormulas(Story story)
{
    private readonly Dictionary<SampleFormula, Guid> _ids = [];

    public IEnumerable<SampleAct> Acts() =>
        from formula in SampleFormulaList.All
        from version in formula.Versions
        select new SampleAct(story.Day(version.DaysAgo, version.Hour), () => WriteAsync(formula, version));

    private async Task WriteAsync(SampleFormula formula, SampleVersion version)
    {
        var actor = version.ByBo ? story.Bo : story.Ana;
        await DraftAsync(formula, actor);
        var draft = (await story.Formulas.ReadAsync(_ids[formula]))!.Draft!;
        story.Clock.Pass(20);
        var kept = (await story.Versions.KeepAsync(actor, Kept(version, draft))).Expect();
        if (version.StaysDraft)
        {
            return;
        }

        story.Clock.Pass(40);
        var released = (await story.Versions.ReleaseAsync(actor, new ReleaseVersion { VersionId = draft.Id, Version = kept.Version })).Expect();
        story.VersionIds[$"{formula.Name}, {formula.Kind} v{released.Number}"] = draft.Id;
        if (version.Density is { } measured)
        {
            story.Clock.Pass(15);
            (await story.Versions.MeasureAsync(actor, new MeasureVersion { VersionId = draft.Id, GramsPerMillilitre = measured, Version = released.Version })).Expect();
        }
    }

    /// <summary>The formula with its sizes at first, and from then on the next version of it.</summary>
    private async Task DraftAsync(SampleFormula formula, Actor actor)
    {
        if (_ids.TryGetValue(formula, out var known))
        {
            var last = (await story.Formulas.ReadAsync(known))!.Released!;
            (await story.Versions.StartDraftAsync(actor, new StartDraft { FromVersionId = last.Id })).Expect();
            return;
        }

        var started = (await story.Formulas.NewAsync(actor, new NewFormula { Name = formula.Name, ProductKind = formula.Kind })).Expect();
        _ids[formula] = started.FormulaId;
        story.FormulaIds[$"{formula.Name}, {formula.Kind}"] = started.FormulaId;
        if ((await story.Formulas.ReadAsync(started.FormulaId))!.Formula.MakesMaterialId is { } makes)
        {
            story.MaterialIds[formula.Name] = makes;
        }

        foreach (var size in formula.Sizes)
        {
            var added = (await story.Sizes.AddAsync(actor, new AddSize
            {
                FormulaId = started.FormulaId, Name = size.Name, Nominal = size.Nominal, OverfillGrams = size.OverfillGrams,
                Parts = [.. size.Parts.Select(p => new SizePart { MaterialId = story.MaterialIds[p.Material], CountPerUnit = p.Count })],
            })).Expect();
            story.SizeIds[$"{formula.Name}, {formula.Kind}, {size.Name}"] = added.SizeId;
        }
    }

    private KeepDraft Kept(SampleVersion version, VersionRow draft) => new()
    {
        VersionId = draft.Id, Version = draft.Version, Why = version.Why, Method = version.Method ?? draft.Method,
        CureMinHours = version.CureMinHours ?? draft.CureMinHours, CureIdealHours = version.CureIdealHours ?? draft.CureIdealHours,
        CureLatestHours = draft.CureLatestHours, TolerancePercent = draft.TolerancePercent, ExpectedLossPercent = draft.ExpectedLossPercent,
        Lines = [.. version.Lines.Select(l => new KeptLine
        {
            MaterialId = story.MaterialIds[l.Material], Amount = l.Amount, Basis = l.Basis, Method = l.Method,
        })],
    };
}
