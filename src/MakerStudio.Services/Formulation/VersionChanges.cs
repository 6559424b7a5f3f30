using MakerStudio.Core.Blending;

namespace MakerStudio.Services.Formulation;

/// <summary>What else changed besides the lines: one thing, from and to in words.</summary>
public sealed record SettingChange(string What, string From, string To);

/// <summary>What changed from one version to another, line by line. Pure.</summary>
/// <param name="Lines">Null while one of the two does not add up.</param>
public sealed record VersionChanges(IReadOnlyList<LineChange>? Lines, IReadOnlyList<SettingChange> Settings)
{
    public bool Nothing => Lines is { Count: 0 } && Settings.Count == 0;

    public static VersionChanges Between(FormulaSheet sheet, VersionRow before, VersionRow after)
    {
        var (old, now) = (Lined(sheet, before), Lined(sheet, after));
        return new(old is null || now is null ? null : FormulaDiff.Between(old, now), [.. SettingsOf(before, after)]);
    }

    private static VersionLine[]? Lined(FormulaSheet sheet, VersionRow version)
    {
        var worked = Worked.Of(sheet, version);
        return worked.AddsUp
            ? [.. version.Lines.Zip(worked.Shares, (l, s) => new VersionLine(l.MaterialId, sheet.Materials[l.MaterialId].Name, s.PercentShown))]
            : null;
    }

    private static IEnumerable<SettingChange> SettingsOf(VersionRow before, VersionRow after)
    {
        SettingChange?[] all =
        [
            Of("shortest rest", Hours(before.CureMinHours), Hours(after.CureMinHours)),
            Of("ideal rest", Hours(before.CureIdealHours), Hours(after.CureIdealHours)),
            Of("latest rest", before.CureLatestHours is { } b ? Hours(b) : "none", after.CureLatestHours is { } a ? Hours(a) : "none"),
            Of("tolerance", Tolerance(before), Tolerance(after)),
            Of("expected loss", $"{before.ExpectedLossPercent:0.####} %", $"{after.ExpectedLossPercent:0.####} %"),
            Of("method", before.Method ?? "", after.Method ?? ""),
        ];
        return all.OfType<SettingChange>();
    }

    private static SettingChange? Of(string what, string from, string to) => from == to ? null : new(what, from, to);

    private static string Tolerance(VersionRow version) => version.TolerancePercent is { } t ? $"{t:0.####} %" : "the studio's";

    private static string Hours(int hours) => hours >= 96 && hours % 24 == 0 ? $"{hours / 24} d" : $"{hours} h";
}
