using System.Runtime.CompilerServices;
using MakerStudio.Browser.Tests.Host;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>
/// What happens in one test, to how many people ever. Ends with a look at what the browsers complained about; when the
/// test fails, leaves a picture of every screen in TestResults.
/// </summary>
public sealed class Scene
{
    private readonly List<Visitor> _visitors = [];
    private readonly StudioHost _host;

    private Scene(StudioHost host) => _host = host;

    public static async Task PlayAsync(StudioHost host, Func<Scene, Task> act, [CallerMemberName] string name = "")
    {
        var scene = new Scene(host);
        try
        {
            await act(scene);
            Assert.Empty(scene._visitors.SelectMany(v => v.Troubles.Select(t => $"{v.Name} at {t}")));
        }
        catch
        {
            await scene.PictureAsync(name);
            throw;
        }
        finally
        {
            foreach (var visitor in scene._visitors)
            {
                await visitor.DisposeAsync();
            }
        }
    }

    /// <summary>Somebody not signed in.</summary>
    public async Task<Visitor> StrangerAsync(Device device, string name = "Stranger") => Take(await Visitor.ComeAsync(name, device, _host.Address));

    public Task<Visitor> AnaAsync(Device? device = null) => SignedInAsync("Ana", device ?? Device.Desk);

    public Task<Visitor> BoAsync(Device? device = null) => SignedInAsync("Bo", device ?? Device.Phone);

    private async Task<Visitor> SignedInAsync(string person, Device device) =>
        Take(await Visitor.ComeAsync(person, device, _host.Address, await _host.SignInOfAsync(person)));

    private Visitor Take(Visitor visitor)
    {
        _visitors.Add(visitor);
        return visitor;
    }

    private async Task PictureAsync(string name)
    {
        foreach (var (visitor, index) in _visitors.Select((v, i) => (v, i)))
        {
            try
            {
                await visitor.Page.ScreenshotAsync(new() { Path = $"TestResults/{name}-{index + 1}-{visitor.Name}.png", FullPage = true });
                await File.WriteAllTextAsync($"TestResults/{name}-{index + 1}-{visitor.Name}.html", await visitor.Page.ContentAsync());
            }
            catch (Microsoft.Playwright.PlaywrightException gone)
            {
                await Console.Error.WriteLineAsync($"No picture of {visitor.Name}'s screen: {gone.Message}");
            }
        }
    }
}
