using System.Collections.Concurrent;
using System.Net;
using System.Text.Json;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using Microsoft.Playwright;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>
/// The studio of one test class: Quince Yard Studio with Ana, an owner, and Bo, a maker, at Sat 24 Oct 2026, 18:00 in
/// Berlin. People are made by the services here; the pages that make them have a test of their own.
/// </summary>
public class StudioHost : IStudio, IAsyncLifetime
{
    public const string Passphrase = "lantern quarry seven tides";

    /// <summary>18:00 in Berlin, the evening before the clocks go back.</summary>
    public static readonly DateTimeOffset SaturdayEvening = new(2026, 10, 24, 16, 0, 0, TimeSpan.Zero);

    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> _signIns = new();

    public StudioApp App { get; private set; } = null!;
    public Uri Address => App.Address;
    public Actor Ana { get; private set; } = null!;
    public Actor Bo { get; private set; } = null!;

    public T Get<T>()
        where T : notnull => App.Get<T>();

    public Task<T> ValueAsync<T>(string sql, params object[] values) => App.ValueAsync<T>(sql, values);

    /// <summary>What the clock shows first.</summary>
    protected virtual DateTimeOffset Begins => SaturdayEvening;

    public async Task InitializeAsync()
    {
        App = await StudioApp.StartAsync(Begins);
        await SettleInAsync();
    }

    /// <summary>What is in the studio before the first test begins.</summary>
    protected virtual async Task SettleInAsync()
    {
        var setUp = new SetUpStudio
        {
            Token = (await App.Get<FirstRun>().IssueLinkAsync())!, Name = "Quince Yard Studio", PersonName = "Ana", Initials = "An",
            Passphrase = Passphrase, Scales = [new NewScale("Scale 2", 5_000_000, 100)],
        };
        var owner = (await App.Get<FirstRun>().SetUpAsync(setUp)).Expect().Owner;
        Ana = await ActorAsync(owner.Id);
        var invitation = new InvitePerson { Name = "Bo" };
        (await App.Get<Invitations>().InviteAsync(Ana, invitation)).Expect();
        var bo = (await App.Get<Invitations>().JoinAsync(new JoinStudio { Token = invitation.Token, Name = "Bo", Initials = "Bo", Passphrase = Passphrase })).Expect();
        Bo = await ActorAsync(bo.Id);
    }

    public async Task DisposeAsync()
    {
        if (App is not null)
        {
            await App.DisposeAsync();
        }
    }

    /// <summary>The cookies of somebody who signed in by the page; once per person, then shared by their browsers.</summary>
    public Task<string> SignInOfAsync(string person) =>
        _signIns.GetOrAdd(person, name => new Lazy<Task<string>>(() => SignInAsync(name))).Value;

    /// <summary>Plain HTTP that follows no redirects, with the cookies of somebody's browser or with none.</summary>
    public async Task<HttpClient> ClientAsync(string? person)
    {
        var cookies = new CookieContainer();
        if (person is not null)
        {
            using var state = JsonDocument.Parse(await SignInOfAsync(person));
            foreach (var cookie in state.RootElement.GetProperty("cookies").EnumerateArray())
            {
                cookies.Add(new System.Net.Cookie(cookie.GetProperty("name").GetString()!, cookie.GetProperty("value").GetString(), "/", Address.Host));
            }
        }

        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = cookies };
        return new HttpClient(handler, disposeHandler: true) { BaseAddress = Address };
    }

    private async Task<string> SignInAsync(string person)
    {
        await using var visitor = await Visitor.ComeAsync(person, Device.Desk, Address);
        await visitor.GoAsync("/sign-in");
        await visitor.Page.SignInAsync(person, PassphraseOf(person));
        Assert.Empty(visitor.Troubles);
        return await visitor.Context.StorageStateAsync();
    }

    /// <summary>Takes Ana and Bo from the database, who came in by the pages.</summary>
    public async Task KnowPeopleAsync()
    {
        Ana = await ActorAsync(await App.ValueAsync<Guid>("select id from people where display_name = 'Ana'"));
        Bo = await ActorAsync(await App.ValueAsync<Guid>("select id from people where display_name = 'Bo'"));
    }

    protected virtual string PassphraseOf(string person) => Passphrase;

    private async Task<Actor> ActorAsync(Guid personId) =>
        new(personId, await App.ValueAsync<string>("select security_stamp from people where id = $1", personId));
}

/// <summary>A studio on its first day: nobody and nothing in it.</summary>
public sealed class EmptyStudioHost : StudioHost
{
    protected override Task SettleInAsync() => Task.CompletedTask;
}
