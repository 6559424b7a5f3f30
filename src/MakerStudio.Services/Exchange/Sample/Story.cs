using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Labels;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>Who is in the sample studio, what o'clock it is there, and what has come about so far.</summary>
internal sealed class Story
{
    /// <summary>Days from the first act to now: with the whole of the first day still within six weeks.</summary>
    public const int Days = 41;

    private readonly StudioStore _store;
    private readonly SampleSignIns _signIns;
    private readonly string _culture;
    private readonly TimeZoneInfo _zone;

    public Story(StudioStore store, SampleSignIns signIns, string culture)
    {
        _signIns = signIns;
        _culture = culture;
        _zone = TimeZoneInfo.FindSystemTimeZoneById(new SetUpStudio().TimeZone);
        Now = store.Clock.GetUtcNow();
        Clock = new StoryClock(Day(Days, 8));
        _store = store.OnClock(Clock);
        Materials = new(_store);
        Suppliers = new(_store);
        Papers = new(_store);
        Deliveries = new(_store);
        Lots = new(_store);
        Formulas = new(_store);
        Versions = new(_store);
        Sizes = new(_store);
        Batches = new(_store);
        Sheets = new(_store);
        Shelf = new(_store);
        Fills = new(_store);
        Goods = new(_store);
        Places = new(_store);
        Consignments = new(_store);
        Sales = new(_store);
        Kits = new(_store);
        Customers = new(_store);
        Settings = new(_store);
        Prices = new(_store);
        Books = new(_store);
        MaterialPrices = new(_store);
        Purchasing = new(_store);
        LabelStocks = new(_store);
        Labels = new(_store);
    }

    /// <summary>When the story ends.</summary>
    public DateTimeOffset Now { get; }
    public StoryClock Clock { get; }
    public Actor Ana { get; private set; } = new(Guid.Empty, "");
    public Actor Bo { get; private set; } = new(Guid.Empty, "");

    public Materials Materials { get; }
    public Suppliers Suppliers { get; }
    public Papers Papers { get; }
    public Deliveries Deliveries { get; }
    public MaterialPrices MaterialPrices { get; }
    public Purchasing Purchasing { get; }
    public Lots Lots { get; }
    public Formulas Formulas { get; }
    public Versions Versions { get; }
    public Sizes Sizes { get; }
    public Batches Batches { get; }
    public WeighSheets Sheets { get; }
    public CureShelf Shelf { get; }
    public Fills Fills { get; }
    public FinishedGoods Goods { get; }
    public Places Places { get; }
    public Consignments Consignments { get; }
    public Sales Sales { get; }
    public Kits Kits { get; }
    public Customers Customers { get; }
    public StudioSettings Settings { get; }
    public PriceBook Prices { get; }
    public Books Books { get; }
    public LabelStocks LabelStocks { get; }
    public FormulaLabels Labels { get; }

    /// <summary>By name.</summary>
    public Dictionary<string, Guid> MaterialIds { get; } = [];

    /// <summary>Released versions by name and number: "Fig v3".</summary>
    public Dictionary<string, Guid> VersionIds { get; } = [];

    /// <summary>What was ordered last, by supplier and material.</summary>
    public Dictionary<(string Supplier, string Material), Guid> OrderLineIds { get; } = [];

    /// <summary>By formula and size: "Fig, 100 mL bottle".</summary>
    public Dictionary<string, Guid> SizeIds { get; } = [];

    /// <summary>By name and kind: "Fig, room-spray-alcohol".</summary>
    public Dictionary<string, Guid> FormulaIds { get; } = [];

    /// <summary>Planned batches by code.</summary>
    public Dictionary<string, Guid> BatchIds { get; } = [];

    public DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, _zone).DateTime);

    /// <summary>The date in the studio where the story stands.</summary>
    public DateOnly Date => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Clock.GetUtcNow(), _zone).DateTime);

    /// <summary>A time of day in the studio, some days before today.</summary>
    public DateTimeOffset Day(int daysAgo, int hour, int minute = 0)
    {
        var local = Today.AddDays(-daysAgo).ToDateTime(new TimeOnly(hour, minute));
        return new DateTimeOffset(local, _zone.GetUtcOffset(local)).ToUniversalTime();
    }

    /// <summary>Some time before now, for what is told in hours.</summary>
    public DateTimeOffset Before(double hours) => Now.AddHours(-hours);

    public async Task<Guid> LotAsync(string code) =>
        (await Lots.FindAsync(code))?.Id ?? throw new InvalidOperationException($"The story has no lot {code}.");

    /// <summary>The studio, Ana who sets it up, and Bo whom she invites.</summary>
    public async Task OpenAsync()
    {
        var firstRun = new FirstRun(_store);
        var token = await firstRun.IssueLinkAsync() ?? throw new InvalidOperationException("Somebody came in before Ana.");
        (await firstRun.SetUpAsync(new SetUpStudio
        {
            Token = token, Name = SampleStudio.NameWhileMade, Address = "4 Quince Yard, Harbour End", Phone = "000 555 0142", Culture = _culture,
            PersonName = _signIns.Ana.Name, Initials = "An", Passphrase = _signIns.Ana.Passphrase, IsSample = true,
            Scales = [new NewScale("Scale 1, fine", 600_000, 10), new NewScale("Scale 2, bench", 6_000_000, 100), new NewScale("Scale 3, drums", 60_000_000, 5_000)],
        })).Expect();
        Ana = await SignedInAsync(_signIns.Ana.Name);
        Clock.Pass(5);
        var invitations = new Invitations(_store);
        var invite = new InvitePerson { Name = _signIns.Bo.Name, Role = PersonRole.Maker };
        (await invitations.InviteAsync(Ana, invite)).Expect();
        Clock.Pass(7);
        (await invitations.JoinAsync(new JoinStudio
        {
            Token = invite.Token, Name = _signIns.Bo.Name, Initials = "Bo", Passphrase = _signIns.Bo.Passphrase,
        })).Expect();
        Bo = await SignedInAsync(_signIns.Bo.Name);
    }

    /// <summary>The last act: the studio takes its name.</summary>
    public async Task FinishAsync()
    {
        var row = await Settings.ReadAsync() ?? throw new InvalidOperationException("The studio is gone.");
        Clock.Reach(Before(0.05));
        (await Settings.ChangeAsync(Ana, new ChangeStudio
        {
            Name = SampleStudio.Name, Address = row.Address, Phone = row.Phone, TimeZone = row.TimeZone, Culture = row.Culture,
            LabourRatePerHour = row.LabourRatePerHour, OverheadPerBatch = row.OverheadPerBatch, OverheadPerUnit = row.OverheadPerUnit,
            TolerancePercent = row.TolerancePercent, ToleranceDivisions = row.ToleranceDivisions,
            RoundBatchUpToMilligrams = row.RoundBatchUpToMilligrams, Version = row.Version,
        })).Expect();
        if (Clock.GetUtcNow() > Now)
        {
            throw new InvalidOperationException("The story ran past now.");
        }
    }

    /// <summary>As the sign-in page would hand them over.</summary>
    private async Task<Actor> SignedInAsync(string name)
    {
        await using var db = await _store.ReadAsync();
        var person = await db.Users.Where(p => p.DisplayName == name).Select(p => new { p.Id, p.SecurityStamp }).SingleAsync();
        return new Actor(person.Id, person.SecurityStamp!);
    }
}
