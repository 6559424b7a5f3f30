using MakerStudio.Core.Exchange;
using MakerStudio.Services.Accounts;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Studio;

/// <summary>The record of acts as a file, newest first.</summary>
internal static class ActsSheet
{
    public static void Map(IEndpointRouteBuilder app) => app.MapSheet("/studio/acts", "acts", asked =>
        Task.FromResult<Sheet?>(Acts.Of(asked.Get<WhoDidWhat>().AllAsync(asked.Cancel), asked.Zone)));

    private static readonly SheetOf<ActRow> Acts = new SheetOf<ActRow>()
        .Number("Act", r => r.Id).Moment("When", r => r.At).Text("Who", r => r.Name).Text("On", r => r.Subject).Text("What", r => r.What);
}
