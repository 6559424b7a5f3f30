using System.Reflection;
using MakerStudio.Browser.Tests.Host;
using MakerStudio.Services.Accounts;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Browser.Tests.EveryPage;

/// <summary>
/// Every address the app answers with a page, read from the app itself, and for each an instance with something on it. A
/// page that is added without one fails the test that compares the two.
/// </summary>
internal static class PageList
{
    /// <summary>Shown to builders in development only.</summary>
    public const string ForBuilders = "/specimen";

    private static readonly Dictionary<string, Func<SampleHost, Task<string>>> Instances = new()
    {
        ["/"] = Plain("/"),
        ["/account/passkeys"] = Plain("/account/passkeys"),
        ["/account/passphrase"] = Plain("/account/passphrase"),
        ["/bench"] = Plain("/bench"),
        ["/bench/plan"] = Plain("/bench/plan"),
        ["/bench/{Code}"] = Found("/bench/{0}", "select code from batches where state = 'Planned' order by code limit 1"),
        ["/bench/{Code}/weigh"] = Found("/bench/{0}/weigh", "select code from batches where state = 'Weighing' limit 1"),
        ["/curing"] = Plain("/curing"),
        ["/curing/{Code}"] = Found("/curing/{0}", "select b.code from batches b join cure_checks c on c.batch_id = b.id where b.state = 'Resting' order by b.code limit 1"),
        ["/error"] = Plain("/error"),
        ["/find"] = Plain("/find?q=fig"),
        ["/finished"] = Plain("/finished"),
        ["/finished/{Code}"] = Found("/finished/{0}", "select b.code from fills f join batches b on b.id = f.batch_id join sale_lines s on s.batch_id = b.id where b.planned_units is not null order by b.code limit 1"),
        ["/finished/label-stock"] = Plain("/finished/label-stock"),
        ["/finished/{Code}/label"] = Found("/finished/{0}/label", "select b.code from label_prints p join batches b on b.id = p.batch_id limit 1"),
        ["/finished/{Code}/fill"] = Found("/finished/{0}/fill", "select code from batches where state = 'Ready' limit 1"),
        ["/finished/customers"] = Plain("/finished/customers"),
        ["/finished/kits"] = Plain("/finished/kits"),
        ["/finished/places"] = Plain("/finished/places"),
        ["/finished/places/{Id:guid}"] = Found("/finished/places/{0}", "select id from places where kind = 'Consignment' limit 1"),
        ["/finished/sales"] = Plain("/finished/sales"),
        ["/finished/sales/import"] = Plain("/finished/sales/import"),
        ["/finished/sales/{Code}"] = Found("/finished/sales/{0}", "select code from sales where channel = 'Market stall' order by code limit 1"),
        ["/finished/sell"] = Plain("/finished/sell"),
        ["/finished/yield/{FormulaId:guid}"] = Found("/finished/yield/{0}", "select v.formula_id from fills f join batches b on b.id = f.batch_id join formula_versions v on v.id = b.formula_version_id order by b.code limit 1"),
        ["/first-run"] = Plain("/first-run?token=spent"),
        ["/join"] = async host =>
        {
            var invitation = new InvitePerson { Name = "Cleo" };
            (await host.App.Get<Invitations>().InviteAsync(host.Ana, invitation)).Expect();
            return $"/join?token={invitation.Token}";
        },
        ["/library"] = Plain("/library"),
        ["/library/bring-in"] = Plain("/library/bring-in"),
        ["/library/new"] = Plain("/library/new"),
        ["/library/{Id:guid}"] = Found("/library/{0}", "select formula_id from formula_versions where state = 'Draft' limit 1"),
        ["/library/{Id:guid}/compare"] = Found("/library/{0}/compare", "select formula_id from formula_versions group by formula_id having count(*) > 1 limit 1"),
        ["/library/{Id:guid}/label"] = Found("/library/{0}/label", "select s.formula_id from labels l join formula_sizes s on s.id = l.formula_size_id limit 1"),
        ["/library/{Id:guid}/room"] = Found("/library/{0}/room", "select v.formula_id from formula_versions v join formulas f on f.id = v.formula_id where f.product_kind = 'room-spray-alcohol' and v.state = 'Released' limit 1"),
        ["/library/{Id:guid}/scale"] = Found("/library/{0}/scale", "select formula_id from formula_sizes limit 1"),
        ["/library/{Id:guid}/v/{Number:int}"] = Found("/library/{0}/v/1", "select formula_id from formula_versions where state = 'Released' and number = 1 limit 1"),
        ["/new-passphrase"] = async host => $"/new-passphrase?token={(await host.App.Get<Invitations>().IssueNewPassphraseAsync("Bo")).Expect().Token}",
        ["/not-found"] = Plain("/no-such-page"),
        ["/prices"] = Plain("/prices"),
        ["/prices/books"] = Plain("/prices/books"),
        ["/prices/year-end"] = Plain("/prices/year-end"),
        ["/prices/channels"] = Plain("/prices/channels"),
        ["/prices/{SizeId:guid}"] = Found("/prices/{0}", "select s.id from formula_sizes s join formulas f on f.id = s.formula_id where f.name = 'Fig' order by s.nominal_millilitres desc limit 1"),
        ["/sign-in"] = Plain("/sign-in"),
        ["/storeroom"] = Plain("/storeroom"),
        ["/storeroom/bring-in"] = Plain("/storeroom/bring-in"),
        ["/storeroom/count"] = Plain("/storeroom/count"),
        ["/storeroom/cover"] = Plain("/storeroom/cover"),
        ["/storeroom/deliveries"] = Plain("/storeroom/deliveries"),
        ["/storeroom/deliveries/{Code}"] = Found("/storeroom/deliveries/{0}", "select code from deliveries order by code limit 1"),
        ["/storeroom/lots/{Code}"] = Found("/storeroom/lots/{0}", "select l.code from lots l join papers p on p.lot_id = l.id where l.status = 'Released' order by l.code limit 1"),
        ["/storeroom/materials/new"] = Plain("/storeroom/materials/new"),
        ["/storeroom/materials/{Id:guid}"] = Found("/storeroom/materials/{0}", "select material_id from lots where code = 'P-1'"),
        ["/storeroom/materials/{Id:guid}/edit"] = Found("/storeroom/materials/{0}/edit", "select material_id from lots order by code limit 1"),
        ["/storeroom/materials/{Id:guid}/prices"] = Found("/storeroom/materials/{0}/prices", "select material_id from price_breaks order by id limit 1"),
        ["/storeroom/materials/{Id:guid}/safety"] = Found("/storeroom/materials/{0}/safety", "select material_id from material_substances order by material_id limit 1"),
        ["/storeroom/orders"] = Plain("/storeroom/orders"),
        ["/storeroom/orders/{Code}"] = Found("/storeroom/orders/{0}", "select code from purchase_orders order by code limit 1"),
        ["/storeroom/orders/draft/{DraftId:guid}"] = Found("/storeroom/orders/draft/{0}", "select id from drafts where kind = 'order' limit 1"),
        ["/storeroom/orders/new"] = Plain("/storeroom/orders/new"),
        ["/storeroom/to-order"] = Plain("/storeroom/to-order"),
        ["/storeroom/receive"] = Plain("/storeroom/receive"),
        ["/storeroom/receive/{DraftId:guid}"] = Plain($"/storeroom/receive/{Guid.CreateVersion7()}"),
        ["/storeroom/to-follow"] = Plain("/storeroom/to-follow"),
        ["/studio"] = Plain("/studio"),
        ["/studio/where-we-sell"] = Plain("/studio/where-we-sell"),
    };

    /// <summary>All templates the app has, those for builders left out.</summary>
    public static IReadOnlyList<string> Templates { get; } =
        [.. Pages().SelectMany(p => p.Templates).Where(t => !t.StartsWith(ForBuilders, StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    public static IReadOnlyList<string> WithInstance { get; } = [.. Instances.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Pages that open without a sign-in are not led to from within.</summary>
    public static bool IsForStrangers(string template) => Pages().Single(p => p.Templates.Contains(template)).ForStrangers;

    public static Task<string> AddressAsync(SampleHost host, string template) => Instances[template](host);

    private static IEnumerable<(IReadOnlyList<string> Templates, bool ForStrangers)> Pages() => typeof(Program).Assembly.GetTypes()
        .Select(t => (Templates: (IReadOnlyList<string>)[.. t.GetCustomAttributes<RouteAttribute>().Select(r => r.Template)], t.GetCustomAttribute<AllowAnonymousAttribute>() is not null))
        .Where(p => p.Templates.Count > 0);

    private static Func<SampleHost, Task<string>> Plain(string path) => _ => Task.FromResult(path);

    private static Func<SampleHost, Task<string>> Found(string path, string sql) =>
        async host => string.Format(System.Globalization.CultureInfo.InvariantCulture, path, await host.App.ValueAsync<object>(sql));
}
