using MakerStudio.Core.Blending;
using MakerStudio.Services.Formulation;
using Microsoft.AspNetCore.Components.Forms;

namespace MakerStudio.Web.Library.Workbench;

/// <summary>One line as it is typed.</summary>
public sealed class DraftLine
{
    public Guid LineId { get; init; } = Guid.CreateVersion7();
    public Guid MaterialId { get; set; }
    public decimal? Amount { get; set; }
    public LineBasis Basis { get; set; }
    public string? Method { get; set; }

    public LineRow Row => new(LineId, MaterialId, Amount, Basis, Method);
}

/// <summary>A draft on screen: everything that can be typed, and the version it was opened with.</summary>
public sealed class DraftForm
{
    private static readonly LineBasis[] Measures = [LineBasis.Grams, LineBasis.Millilitres, LineBasis.Drops];

    public DraftForm(VersionRow opened, LineBasis usual)
    {
        VersionId = opened.Id;
        Basis = opened.Lines.Count == 0 ? usual : Shown(opened.Lines);
        Edit = new EditContext(this);
        Take(opened);
    }

    public Guid VersionId { get; }
    public uint Version { get; set; }
    public DateTimeOffset KeptAt { get; set; }

    /// <summary>The way all amounts are typed; grams stands for g, mL and drops mixed.</summary>
    public LineBasis Basis { get; private set; }
    public List<DraftLine> Lines { get; } = [];
    public string? Why { get; set; }
    public string? Method { get; set; }
    public decimal? CureMinHours { get; set; }
    public decimal? CureIdealHours { get; set; }
    public decimal? CureLatestHours { get; set; }
    public decimal? TolerancePercent { get; set; }
    public decimal? ExpectedLossPercent { get; set; }
    public EditContext Edit { get; }

    /// <summary>Whether every field could be read; while one could not, nothing is kept.</summary>
    public bool IsRead => !Edit.GetValidationMessages().Any() && CureMinHours is not null && CureIdealHours is not null && ExpectedLossPercent is not null;

    public IReadOnlyList<LineRow> Rows => [.. Lines.Select(l => l.Row)];

    public void Take(VersionRow kept)
    {
        (Version, KeptAt) = (kept.Version, kept.KeptAt);
        (Why, Method) = (kept.Why, kept.Method);
        (CureMinHours, CureIdealHours, CureLatestHours) = (kept.CureMinHours, kept.CureIdealHours, kept.CureLatestHours);
        (TolerancePercent, ExpectedLossPercent) = (kept.TolerancePercent, kept.ExpectedLossPercent);
        Put(kept.Lines);
    }

    /// <summary>Replaces the lines; the ones that stay keep their place on screen.</summary>
    public void Put(IReadOnlyList<LineRow> rows)
    {
        Lines.Clear();
        Lines.AddRange(rows.Select(r => new DraftLine { LineId = r.LineId, MaterialId = r.MaterialId, Amount = r.Amount, Basis = r.Basis, Method = r.Method }));
        Basis = rows.Count == 0 ? Basis : Shown(rows);
    }

    public void Use(LineBasis basis) => Basis = basis;

    public void Add(Guid materialId) => Lines.Add(new DraftLine { MaterialId = materialId, Basis = Basis, Amount = null });

    public void Move(DraftLine line, int by)
    {
        var at = Lines.IndexOf(line);
        var to = Math.Clamp(at + by, 0, Lines.Count - 1);
        Lines.RemoveAt(at);
        Lines.Insert(to, line);
    }

    public KeepDraft ToRequest() => new()
    {
        VersionId = VersionId, Version = Version, Why = Why, Method = Method,
        CureMinHours = Whole(CureMinHours) ?? 0, CureIdealHours = Whole(CureIdealHours) ?? 0, CureLatestHours = Whole(CureLatestHours),
        TolerancePercent = TolerancePercent, ExpectedLossPercent = ExpectedLossPercent ?? 0,
        Lines = [.. Lines.Select(l => new KeptLine { LineId = l.LineId, MaterialId = l.MaterialId, Amount = l.Amount, Basis = l.Basis, Method = l.Method })],
    };

    private static LineBasis Shown(IReadOnlyList<LineRow> lines) =>
        lines.Any(l => l.Basis == LineBasis.PercentOfWax) ? LineBasis.PercentOfWax
        : Measures.Contains(lines[0].Basis) ? LineBasis.Grams
        : lines[0].Basis;

    private static int? Whole(decimal? hours) => hours is { } h ? (int)decimal.Clamp(decimal.Truncate(h), int.MinValue, int.MaxValue) : null;
}
