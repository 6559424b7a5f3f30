using System.Net;
using System.Text.RegularExpressions;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.Host;
using MakerStudio.Services.Accounts;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.People;

/// <summary>Who may do what, by which proof, and for how long.</summary>
public sealed partial class PowerTests(StudioHost host) : IClassFixture<StudioHost>
{
    /// <summary>A device with a lock of its own, as Chromium's developer protocol plays one.</summary>
    private static readonly Dictionary<string, object> Device = new()
    {
        ["options"] = new Dictionary<string, object>
        {
            ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true, ["hasUserVerification"] = true,
            ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true,
        },
    };

    [Fact]
    public Task Passkey_AddedOnThisDevice_SignsInAndItsAnswerWorksNowhereElse() => Scene.PlayAsync(host, async scene =>
    {
        var ana = await scene.StrangerAsync(Browsing.Device.Desk, "Ana");
        var protocol = await ana.Context.NewCDPSessionAsync(ana.Page);
        await protocol.SendAsync("WebAuthn.enable");
        await protocol.SendAsync("WebAuthn.addVirtualAuthenticator", Device);
        await ana.GoAsync("/sign-in");
        await ana.Page.SignInAsync("Ana", StudioHost.Passphrase);
        await ana.GoAsync("/account/passkeys");
        await ana.Page.EnterAsync("Name of this device", "Desk");
        await ana.Page.Button("Add a passkey").ClickAsync();
        await Expect(ana.Page.Button("Remove Desk")).ToBeVisibleAsync();

        await ana.GoAsync("/");
        await ana.Page.GetByRole(AriaRole.Button, new() { Name = "An, Ana" }).ClickAsync();
        await ana.Page.Button("Sign out").ClickAsync();
        await Expect(ana.Page.Heading("Who is at the bench?")).ToBeVisibleAsync();
        var posted = ana.Page.WaitForRequestAsync(r => r.Method == "POST" && r.Url.Contains("/sign-in", StringComparison.Ordinal));
        await ana.Page.Button("Use a passkey").ClickAsync();
        await ana.Page.WaitForURLAsync("**/");
        await Expect(ana.Page.Strip("Quince Yard Studio")).ToBeVisibleAsync();

        // The same answer from another machine has no question of ours to go with.
        var eve = await scene.StrangerAsync(Browsing.Device.Desk, "Eve");
        await eve.GoAsync("/sign-in");
        var credential = CredentialField().Match((await posted).PostData!).Groups[1].Value;
        await eve.Page.EvaluateAsync(
            "answer => { const form = document.querySelector('form[data-passkey]'); form.querySelector('[name=Credential]').value = answer; form.submit(); }",
            Uri.UnescapeDataString(credential.Replace('+', ' ')));
        await Expect(eve.Page.Refusal()).ToBeVisibleAsync();
        await eve.GoAsync("/library");
        await Expect(eve.Page.Heading("Who is at the bench?")).ToBeVisibleAsync();
    });

    [Fact]
    public Task RemovedPerson_WithAPageOpen_HasNoPowerAtTheNextAct() => Scene.PlayAsync(host, async scene =>
    {
        var invitation = new InvitePerson { Name = "Cleo" };
        (await host.App.Get<Invitations>().InviteAsync(host.Ana, invitation)).Expect();
        var cleo = await scene.StrangerAsync(Browsing.Device.Phone, "Cleo");
        await cleo.GoAsync($"/join?token={invitation.Token}");
        await cleo.Page.JoinAsync("Cl", StudioHost.Passphrase);
        await cleo.GoAsync("/library/new");
        await cleo.Page.EnterAsync("Name", "Tide");
        await cleo.Page.GetByLabel("Made as").SelectOptionAsync("room-spray-alcohol");
        var id = await host.App.ValueAsync<Guid>("select id from people where display_name = 'Cleo'");
        (await host.App.Get<MakerStudio.Services.Accounts.People>().RemoveAsync(host.Ana, new RemovePerson { PersonId = id })).Expect();

        await cleo.Page.Button("Start the draft").ClickAsync();
        await Expect(cleo.Page.GetByText("signed out").Or(cleo.Page.Heading("Who is at the bench?")).First).ToBeVisibleAsync();
        Assert.Equal(0, await host.App.ValueAsync<int>("select count(*) from formulas where name = 'Tide'"));
    });

    /// <summary>The forms of an owner's acts, posted by a maker with a good token of their own.</summary>
    [Theory]
    [InlineData("invite", "_form.Name=Eve&_form.Role=Owner")]
    [InlineData("settings", "_form.Name=Other+studio")]
    public async Task OwnersAct_ForgedByAMaker_HasNoEffect(string handler, string fields)
    {
        using var bo = await host.ClientAsync("Bo");
        var token = Token().Match(await bo.GetStringAsync(new Uri("/studio", UriKind.Relative))).Groups[1].Value;
        Assert.NotEmpty(token);
        using var form = new StringContent($"_handler={handler}&{fields}&__RequestVerificationToken={Uri.EscapeDataString(token)}", new System.Net.Http.Headers.MediaTypeHeaderValue("application/x-www-form-urlencoded"));
        using var answer = await bo.PostAsync(new Uri("/studio", UriKind.Relative), form);
        Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError);
        Assert.Equal(0, await host.App.ValueAsync<int>("select count(*) from invitations where name = 'Eve'"));
        Assert.Equal("Quince Yard Studio", await host.App.ValueAsync<string>("select name from studio"));
    }

    [GeneratedRegex("(?:^|&)Credential=([^&]+)")]
    private static partial Regex CredentialField();

    [GeneratedRegex("__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
