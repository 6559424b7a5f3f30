using System.Collections;
using MakerStudio.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace MakerStudio.Web.Tests.Hosting;

public sealed class FrontDoorTests
{
    [Theory]
    [InlineData("GET", "/_blazor", "http://elsewhere.example", 403)]
    [InlineData("POST", "/_blazor/negotiate", "null", 403)]
    [InlineData("POST", "/account/sign-out", "https://studio.example", 403)]
    [InlineData("POST", "/account/sign-out", "http://studio.example", 200)]
    [InlineData("GET", "/_blazor", "http://studio.example", 200)]
    [InlineData("GET", "/_blazor", null, 200)]
    [InlineData("GET", "/materials", "http://elsewhere.example", 200)]
    public async Task Request_FromAnOrigin_OnlyAForeignOneThatCouldActIsRefused(string method, string path, string? origin, int status)
    {
        var context = new DefaultHttpContext();
        context.Request.Method = method;
        context.Request.Path = path;
        context.Request.Scheme = "http";
        context.Request.Host = new HostString("studio.example");
        context.Request.Headers.Origin = origin;

        await ForeignOrigin.RefuseAsync(context, _ => Task.CompletedTask);

        Assert.Equal(status, context.Response.StatusCode);
    }

    [Fact]
    public async Task Head_OfAPage_RunsAsGetWithoutABody()
    {
        var context = new DefaultHttpContext();
        var sent = new MemoryStream();
        context.Response.Body = sent;
        context.Request.Method = "HEAD";
        var seen = "";

        await HeadRequests.AnswerAsync(context, inner =>
        {
            seen = inner.Request.Method;
            return inner.Response.WriteAsync("a page");
        });

        Assert.Equal("GET", seen);
        Assert.Equal("HEAD", context.Request.Method);
        Assert.Equal(0, sent.Length);
    }

    [Fact]
    public void SecretFiles_NamedFile_BecomesTheSettingWithoutItsLineBreak()
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, "Host=shelf;Password=a b \n");
        var environment = new Hashtable { ["ConnectionStrings__Studio_FILE"] = file, ["SSL_CERT_FILE"] = "/nowhere/at/all" };

        var settings = SecretFiles.Read(environment);

        Assert.Equal("Host=shelf;Password=a b ", Assert.Single(settings).Value);
        Assert.Equal("ConnectionStrings:Studio", settings.Keys.Single());
        File.Delete(file);
    }

    [Fact]
    public void SecretFiles_MissingFile_NamesVariableAndFile()
    {
        var environment = new Hashtable { ["ConnectionStrings__Studio_FILE"] = "/nowhere/at/all" };

        var refusal = Assert.Throws<HostingException>(() => SecretFiles.Read(environment));

        Assert.Contains("ConnectionStrings__Studio_FILE", refusal.Message);
        Assert.Contains("/nowhere/at/all", refusal.Message);
    }

    [Fact]
    public void Proxies_AddressAndNetwork_AreTheOnlyOnesBelieved()
    {
        var options = new ForwardedHeadersOptions();

        StudioFront.Believe(options, "10.1.2.3, 192.168.0.0/16");

        Assert.Equal("10.1.2.3", Assert.Single(options.KnownProxies).ToString());
        Assert.Equal("192.168.0.0/16", Assert.Single(options.KnownIPNetworks).ToString());
        Assert.Throws<HostingException>(() => StudioFront.Believe(options, "the router"));
    }

    [Theory]
    [InlineData(null, null, "http://localhost:5080/")]
    [InlineData(null, "8080", "http://localhost:8080/")]
    [InlineData("http://0.0.0.0:7000", null, "http://localhost:7000/")]
    [InlineData("https://studio.example;http://*:7001", "8080", "http://localhost:7001/")]
    public void HealthCheck_HoweverTheStudioListens_AsksOnThisMachine(string? urls, string? ports, string asked) =>
        Assert.Equal(asked, HealthCheck.AddressOf(urls, ports).AbsoluteUri);

    [Theory]
    [InlineData(new string[0], "")]
    [InlineData(new[] { "--urls=http://localhost:1" }, "")]
    [InlineData(new[] { "help" }, "help")]
    [InlineData(new[] { "halp" }, null)]
    public async Task Command_FirstWord_NamesIt(string[] args, string? name) =>
        Assert.Equal(name, (await StudioCommand.ReadAsync(args)).Command?.Name);
}
