using MakerStudio.Services.Accounts;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Exchange.FormulaFile;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Labels;
using MakerStudio.Services.Schema;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;

namespace MakerStudio.Services;

/// <summary>Registers every service of the studio on one database.</summary>
public static class StudioServices
{
    /// <param name="connectionString">The app's role; it needs no right to change the schema.</param>
    public static IServiceCollection AddStudioServices(this IServiceCollection services, string connectionString)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.Configure<IdentityOptions>(StudioDbOptions.UsePasskeySchema);
        services.AddDbContextFactory<StudioDb>(options => StudioDbOptions.Configure(options, connectionString));
        services.AddDataProtection().SetApplicationName("MakerStudio").PersistKeysToDbContext<StudioDb>();
        services.AddSingleton(sp => new StudioStore(sp.GetRequiredService<IDbContextFactory<StudioDb>>(), sp.GetRequiredService<TimeProvider>()));
        services.AddSingleton(sp => new StudioNews(connectionString, sp.GetRequiredService<ILogger<StudioNews>>()));
        services.AddHostedService(sp => sp.GetRequiredService<StudioNews>());

        // Formulation
        services.AddSingleton<Formulas>();
        services.AddSingleton<Versions>();
        services.AddSingleton<Sizes>();
        services.AddSingleton<FormulaFiles>();

        // Accounts
        services.AddSingleton<StudioSettings>();
        services.AddSingleton<People>();
        services.AddSingleton<Invitations>();
        services.AddSingleton<FirstRun>();
        services.AddSingleton<WhoDidWhat>();
        services.AddStudioSignIn();

        // Curing and finished
        services.AddSingleton<CureShelf>();
        services.AddSingleton<Fills>();
        services.AddSingleton<BatchRecords>();
        services.AddSingleton<BatchCosting>();
        services.AddSingleton<FinishedGoods>();
        services.AddSingleton<Places>();
        services.AddSingleton<Customers>();
        services.AddSingleton<Consignments>();
        services.AddSingleton<Sales>();
        services.AddSingleton<Kits>();
        services.AddSingleton<SalesFiles>();

        // Labels
        services.AddSingleton<LabelStocks>();
        services.AddSingleton<FormulaLabels>();
        services.AddSingleton<BatchLabels>();

        // Prices and books
        services.AddSingleton<PriceBook>();
        services.AddSingleton<Books>();

        // Today and finding
        services.AddSingleton<StudioPulse>();
        services.AddSingleton<Finder>();

        // Storeroom
        services.AddSingleton<Materials>();
        services.AddSingleton<Suppliers>();
        services.AddSingleton<Purchasing>();
        services.AddSingleton<Papers>();
        services.AddSingleton<MaterialPrices>();

        // Bench
        services.AddSingleton<Batches>();
        services.AddSingleton<WeighSheets>();

        // Inventory
        services.AddSingleton<Deliveries>();
        services.AddSingleton<Lots>();
        services.AddSingleton<Stock>();
        services.AddSingleton<Verify>();

        // Exchange
        services.AddSingleton<BroughtFiles>();
        services.AddSingleton<SampleStudio>();

        return services;
    }
}
