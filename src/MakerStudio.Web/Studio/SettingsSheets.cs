using MakerStudio.Core.Exchange;
using MakerStudio.Services.Accounts;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Studio;

/// <summary>Who works here and what is weighed with, as files.</summary>
internal static class SettingsSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/studio/people", "people", async asked =>
            Everybody.Of((await asked.Get<People>().ListAsync(asked.Cancel)).Where(p => p.RemovedAt is null), asked.Zone));
        app.MapSheet("/studio/scales", "scales", async asked => Scales.Of(await asked.Get<StudioSettings>().ScalesAsync(asked.Cancel), asked.Zone));
    }

    private static readonly SheetOf<PersonRow> Everybody = new SheetOf<PersonRow>()
        .Text("Name", r => r.Name).Text("Initials", r => r.Initials).Text("Role", r => r.Role == PersonRole.Owner ? "owner" : "maker").Moment("Since", r => r.JoinedAt);

    private static readonly SheetOf<ScaleRow> Scales = new SheetOf<ScaleRow>()
        .Text("Scale", r => r.Name).Number("Weighs up to (g)", r => Grams(r.CapacityMilligrams)).Number("In steps of (g)", r => Grams(r.ReadabilityMilligrams))
        .Moment("Retired", r => r.RetiredAt);
}
