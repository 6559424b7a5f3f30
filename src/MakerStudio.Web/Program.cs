using MakerStudio.LocalPostgres;
using MakerStudio.Services;
using MakerStudio.Services.Schema;
using MakerStudio.Web.Account;
using MakerStudio.Web.Finished.Selling;
using MakerStudio.Web.Bench;
using MakerStudio.Web.Finished;
using MakerStudio.Web.Hosting;
using MakerStudio.Web.Library;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Files;
using MakerStudio.Web.Shell.Sheets;
using MakerStudio.Web.Storeroom;

var (command, words) = await StudioCommand.ReadAsync(args);
if (command is null)
{
    return 2;
}

if (command.Alone is { } alone)
{
    return await alone(words);
}

try
{
    var builder = WebApplication.CreateBuilder(command.WithServices is null ? words : []);
    builder.AddSecretFiles().AddStudioLog().AddStudioFront();
    await using var database = await StudioDatabase.ChooseAsync(builder.Configuration, beside: command.WithServices is not null, command.UsualFolder);
    builder.Services.AddStudioServices(database.AppConnectionString);
    builder.AddStudioShell();
    builder.AddStudioAccounts();

    await StudioSchema.MigrateAsync(database.OwnerConnectionString, database.AppRole);
    await using var app = builder.Build();
    if (command.WithServices is { } withServices)
    {
        return await withServices(app.Services, words);
    }

    await (command.BeforeServing?.Invoke(app.Services) ?? Task.CompletedTask);
    app.UseStudioFront();
    app.UseStudioErrorPages();
    app.UseStudioCulture();
    app.UseRouting();
    app.UseStudioAccounts();
    app.UseAntiforgery();
    app.MapStudioHealth();
    app.MapPapers();
    app.MapSalesFiles();
    app.MapBroughtFiles();
    app.MapStudioAccounts();
    app.MapStudioBench();
    app.MapLabels();
    app.MapFormulaFiles();
    app.MapStudioSheets();
    app.MapStudioShell();
    await app.RunAsync();
    return 0;
}
catch (Exception explained) when (explained is LocalPostgresException or HostingException)
{
    await Console.Error.WriteLineAsync(explained.Message);
    return 1;
}
