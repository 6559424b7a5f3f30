using MakerStudio.Core.Advice;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Account;
using MakerStudio.Web.Library.Workbench;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace MakerStudio.Web.Library;

/// <summary>The workbench: change one thing and see all that follows. Every change is kept as it is made.</summary>
public partial class FormulaPage
{
    private const decimal UsualBatchGrams = 1000m;
    private decimal? _batchGrams;
    private Consequences? _now;
    private Consequences? _before;
    private (FormulaSheet Sheet, IReadOnlyList<LineRow> Lines, bool Releasing)? _of;
    private bool _releasing;
    private bool _dirty;
    private bool _keeping;
    private Task _keep = Task.CompletedTask;
    private bool _skipped;
    private Refusal? _why;
    private StaleDraft? _stale;
    private string? _undone;
    private DateTimeOffset? _undoneAt;
    private Action? _putBack;

    [Inject] private Formulas Formulas { get; set; } = default!;
    [Inject] private Versions Versions { get; set; } = default!;
    [Inject] private CurrentPerson Person { get; set; } = default!;
    [Inject] private IDialogService Dialogs { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;

    [Parameter] public Guid Id { get; set; }
    [PersistentState] public FormulaSheet? Data { get; set; }
    [PersistentState] public IReadOnlyList<LineMaterial>? Choosable { get; set; }
    [PersistentState] public IReadOnlyList<LineMaterial>? Packing { get; set; }

    private DraftForm? Form { get; set; }

    private IReadOnlyList<LineMaterial> Materials => Choosable ?? [];

    private IReadOnlyList<LineMaterial> Packaging => Packing ?? [];

    private VersionRow? Draft => Data?.Draft;

    /// <summary>The draft as it stands in the form, kept or not.</summary>
    private VersionRow Shown => Draft! with { Lines = Form!.Rows, Why = Form.Why, Method = Form.Method };

    private bool IsRead => Form!.IsRead;

    /// <summary>What follows from what is typed; while a field cannot be read, from the last that could.</summary>
    private Consequences? Now
    {
        get
        {
            var lines = Form!.Rows;
            if (IsRead && !(_of is { } of && of.Sheet == Data && of.Releasing == _releasing && of.Lines.SequenceEqual(lines)))
            {
                _of = (Data!, lines, _releasing);
                _now = Consequences.Of(Data!, Shown, _releasing);
                _before = Data!.Before(Draft!) is { } before && (_before?.Version != before || _before.Result?.Choices != Data.Choices) ? Consequences.Of(Data, before) : _before;
            }

            return _now;
        }
    }

    /// <summary>The same of the version this draft was changed from; null for the first.</summary>
    private Consequences? BeforeIt => Data!.Before(Draft!) is null ? null : _before;

    private VersionRow Readable => _now?.Version ?? Shown;

    private FormulaSheet Live => Data! with { Versions = [.. Data!.Versions.Select(v => v.Id == Readable.Id ? Readable with { Why = Form!.Why, Method = Form.Method } : v)] };

    private VersionRow[] Bars => BeforeIt is null ? [Readable] : [BeforeIt.Version, Readable];

    private string Keeping => _stale is not null || _why is not null and not AdviceOpen ? "Not kept yet"
        : !Form!.IsRead ? "Not kept: a field cannot be read"
        : _dirty || _keeping ? "Keeping…"
        : $"Kept {TimeZoneInfo.ConvertTime(Form.KeptAt, Shell.TimeZone):HH:mm}";

    [Inject] private Shell.ShellState Shell { get; set; } = default!;

    private string Sentence => Form!.Lines.Count == 0 ? "Add the first material; the percentages are worked out for you."
        : !IsRead ? "One field cannot be read yet."
        : _now is not { Worked.AddsUp: true } ? "The lines do not add up yet."
        : BeforeIt is null ? $"{Form.Lines.Count} lines add up to 100.00 % by weight."
        : $"Changed from v{BeforeIt.Version.Number}.{(OpenAdvice > 0 ? "" : " Release it to make it.")}";

    /// <summary>Advice that stops a release and that nobody gave a reason against.</summary>
    private int OpenAdvice => _now?.Result?.Advice.Count(a => a.Kind == AdviceKind.Stop && Draft!.Answer(a) is null) ?? 0;

    private string? NotYet => Form!.Lines.Count == 0 ? "no lines yet"
        : !IsRead ? "a field cannot be read"
        : _now is not { Worked.AddsUp: true } ? "the lines do not add up"
        : Form.Lines.Any(l => l.Basis == LineBasis.Drops) ? "drops are for trials"
        : _stale is not null || _why is not null and not AdviceOpen ? "not kept yet"
        : OpenAdvice > 0 ? $"{OpenAdvice} to answer under Advice" : null;

    protected override async Task OnInitializedAsync()
    {
        if (Data is null)
        {
            Data = await Formulas.ReadAsync(Id);
            Choosable = await Formulas.MaterialsAsync();
            Packing = await Formulas.PackagingAsync();
        }

        _batchGrams = Data?.LastBatchMilligrams / 1000m ?? UsualBatchGrams;
        Open();
    }

    protected override bool Concerns(News news) => news.Topic switch
    {
        Topics.Formulas or Topics.Materials or Topics.Lots or Topics.Batches or Topics.Studio => true,
        _ => false,
    };

    protected override async Task ReadAsync()
    {
        FormulaSheet? fresh;
        IReadOnlyList<LineMaterial> choosable, packing;
        uint? seen;
        do
        {
            _skipped = _keeping;
            if (_keeping)
            {
                return;
            }

            seen = Form?.Version;
            fresh = await Formulas.ReadAsync(Id);
            choosable = await Formulas.MaterialsAsync();
            packing = await Formulas.PackagingAsync();
        }
        while (_keeping || Form?.Version != seen); // What was read before this page kept something must not take its place.

        if (fresh is null)
        {
            return;
        }

        (Choosable, Packing) = (choosable, packing);
        var added = Form?.Lines.Select(l => l.MaterialId).Where(id => !fresh.Materials.ContainsKey(id)).Distinct().Select(id => Data!.Materials[id]) ?? [];
        Data = fresh with
        {
            Materials = new Dictionary<Guid, LineMaterial>(fresh.Materials.Concat(added.Select(m => KeyValuePair.Create(m.Id, m)))),
            Facts = fresh.Facts.And(Data?.Facts ?? MaterialFacts.None),
        };
        if (Form is null || Draft is null || Draft.Id != Form.VersionId)
        {
            Open();
        }
        else if (Draft.Version != Form.Version && !_dirty && Form.IsRead && _stale is null && _why is null)
        {
            Form.Take(Draft);
        }
    }

    private void Open() => Form = Draft is null ? null : new DraftForm(Draft, ProductKinds.Get(Data!.Formula.ProductKind).DefaultBasis);

    private async Task AddAsync(LineMaterial material)
    {
        Know(material, await Formulas.FactsAsync(material.Id));
        Form!.Add(material.Id);
        await ChangedAsync();
    }

    private void Know(LineMaterial material, MaterialFacts facts) => Data = Data! with
    {
        Materials = new Dictionary<Guid, LineMaterial>(Data.Materials) { [material.Id] = material },
        Facts = facts.And(Data.Facts),
    };

    private Task TakeOutAsync(DraftLine line)
    {
        var at = Form!.Lines.IndexOf(line);
        Form.Lines.Remove(line);
        return OfferUndo($"{Data!.Materials[line.MaterialId].Name} is taken out.", () => Form.Lines.Insert(Math.Min(at, Form.Lines.Count), line));
    }

    private Task UseAsync(TriedLines variant, LineMaterial? brought, MaterialFacts facts)
    {
        if (brought is not null)
        {
            Know(brought, facts);
        }

        Form!.Put(variant.Lines);
        return OfferUndo($"{variant.Name}: these are the draft’s lines now.", () => Form.Put(variant.TakenBack(Form.Rows)));
    }

    private async Task OfferUndo(string what, Action putBack)
    {
        (_undone, _undoneAt, _putBack) = (what, Clock.GetUtcNow(), putBack);
        StateHasChanged(); // A part that calls a delegate of the page does not render it.
        await ChangedAsync();
        StateHasChanged();
    }

    private Task PutBackAsync()
    {
        _putBack?.Invoke();
        (_undone, _undoneAt, _putBack) = (null, null, null);
        return ChangedAsync();
    }

    private async Task ThrowAwayAsync()
    {
        // Held here: the page may hear of its own act, and have no draft any more, before the answer comes back.
        var (number, name, before) = (Draft!.Number, Data!.Formula.Name, Data.Before(Draft)?.Number);
        var answer = await Dialogs.AskAsync(new QuestionText(
            $"Throw {name} v{number} away?",
            before is null ? $"Its {Form!.Lines.Count} lines, method and sizes are gone for good, and {name} leaves the library: no other version of it exists."
                : $"Its {Form!.Lines.Count} lines and its method are gone for good. v{before} and what was made from it stay.",
            $"Throw v{number} away", "Keep it", Danger: true, Glyph: Glyphs.Bin));
        if (!answer.Chosen)
        {
            return;
        }

        var outcome = await Versions.ThrowAwayDraftAsync(await Person.ActorAsync(), new ThrowAwayDraft { VersionId = Form.VersionId, Version = Form.Version });
        _stale = outcome.Refusal as StaleDraft;
        _why = _stale is null ? outcome.Refusal : null;
        if (outcome is Done<DraftThrownAway> done)
        {
            Navigation.NavigateTo(done.Value.FormulaGone ? "/library" : $"/library/{Id}/v/{before}");
        }
    }

    private async Task ReleaseAsync()
    {
        var number = Draft!.Number;
        var answer = await Dialogs.AskAsync(new QuestionText(
            $"Release v{number}?", $"Its {Form!.Lines.Count} lines, method and rest times are frozen for good. Changing it later starts v{number + 1}.",
            $"Release v{number}", "Go on writing", BeforeIt is not null && Form.Why is null ? $"Why it differs from v{BeforeIt.Version.Number}" : null, Glyph: Glyphs.Lock));
        if (!answer.Chosen)
        {
            return;
        }

        var outcome = await Versions.ReleaseAsync(
            await Person.ActorAsync(), new ReleaseVersion { VersionId = Form.VersionId, Version = Form.Version, Why = answer.Reason });
        _stale = outcome.Refusal as StaleDraft;
        _why = _stale is null ? outcome.Refusal : null;
        _releasing = _why is AdviceOpen; // What only matters at a release stands under Advice from here on.
        if (outcome is Done<VersionReleased> done)
        {
            Navigation.NavigateTo($"/library/{Id}/v/{done.Value.Number}");
        }
    }
}
