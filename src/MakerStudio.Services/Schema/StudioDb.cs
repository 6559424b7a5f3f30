using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Schema;

/// <summary>The one schema. Internal on purpose: pages see requests, outcomes and row records only.</summary>
internal sealed class StudioDb(DbContextOptions<StudioDb> options)
    : IdentityUserContext<Person, Guid, IdentityUserClaim<Guid>, IdentityUserLogin<Guid>, IdentityUserToken<Guid>, IdentityUserPasskey<Guid>>(options), IDataProtectionKeyContext
{
    public DbSet<Studio> Studio => Set<Studio>();
    public DbSet<Scale> Scales => Set<Scale>();
    public DbSet<Draft> Drafts => Set<Draft>();
    public DbSet<CodeCounter> CodeCounters => Set<CodeCounter>();
    public DbSet<Invitation> Invitations => Set<Invitation>();
    public DbSet<HandledRequest> HandledRequests => Set<HandledRequest>();
    public DbSet<Act> Acts => Set<Act>();
    public DbSet<Material> Materials => Set<Material>();
    public DbSet<Supplier> Suppliers => Set<Supplier>();
    public DbSet<MaterialSupplier> MaterialSuppliers => Set<MaterialSupplier>();
    public DbSet<Paper> Papers => Set<Paper>();
    public DbSet<MaterialSafety> MaterialSafety => Set<MaterialSafety>();
    public DbSet<MaterialSubstance> MaterialSubstances => Set<MaterialSubstance>();
    public DbSet<CertificateLimit> CertificateLimits => Set<CertificateLimit>();
    public DbSet<Market> Market => Set<Market>();
    public DbSet<Lot> Lots => Set<Lot>();
    public DbSet<LotBalance> LotBalances => Set<LotBalance>();
    public DbSet<Movement> Movements => Set<Movement>();
    public DbSet<LotEvent> LotEvents => Set<LotEvent>();
    public DbSet<PriceBreak> PriceBreaks => Set<PriceBreak>();
    public DbSet<Delivery> Deliveries => Set<Delivery>();
    public DbSet<DeliveryLine> DeliveryLines => Set<DeliveryLine>();
    public DbSet<PurchaseOrder> PurchaseOrders => Set<PurchaseOrder>();
    public DbSet<PurchaseOrderLine> PurchaseOrderLines => Set<PurchaseOrderLine>();
    public DbSet<OrderClosing> OrderClosings => Set<OrderClosing>();
    public DbSet<Formula> Formulas => Set<Formula>();
    public DbSet<FormulaVersion> FormulaVersions => Set<FormulaVersion>();
    public DbSet<AdviceOverride> AdviceOverrides => Set<AdviceOverride>();
    public DbSet<FormulaLine> FormulaLines => Set<FormulaLine>();
    public DbSet<FormulaSize> FormulaSizes => Set<FormulaSize>();
    public DbSet<Batch> Batches => Set<Batch>();
    public DbSet<BatchLine> BatchLines => Set<BatchLine>();
    public DbSet<BatchPart> BatchParts => Set<BatchPart>();
    public DbSet<Weighing> Weighings => Set<Weighing>();
    public DbSet<PendingReceipt> PendingReceipts => Set<PendingReceipt>();
    public DbSet<Deviation> Deviations => Set<Deviation>();
    public DbSet<CureCheck> CureChecks => Set<CureCheck>();
    public DbSet<Fill> Fills => Set<Fill>();
    public DbSet<UnitMovement> UnitMovements => Set<UnitMovement>();
    public DbSet<LabelStockRow> LabelStocks => Set<LabelStockRow>();
    public DbSet<LabelRow> Labels => Set<LabelRow>();
    public DbSet<LabelPrint> LabelPrints => Set<LabelPrint>();
    public DbSet<Place> Places => Set<Place>();
    public DbSet<Customer> Customers => Set<Customer>();
    public DbSet<UnitBalance> UnitBalances => Set<UnitBalance>();
    public DbSet<Sale> Sales => Set<Sale>();
    public DbSet<SaleLine> SaleLines => Set<SaleLine>();
    public DbSet<Dispatch> Dispatches => Set<Dispatch>();
    public DbSet<SalesFile> SalesFiles => Set<SalesFile>();
    public DbSet<SalesFilePart> SalesFileParts => Set<SalesFilePart>();
    public DbSet<Placement> Placements => Set<Placement>();
    public DbSet<PlacementLine> PlacementLines => Set<PlacementLine>();
    public DbSet<ConsignmentReport> ConsignmentReports => Set<ConsignmentReport>();
    public DbSet<ConsignmentReportLine> ConsignmentReportLines => Set<ConsignmentReportLine>();
    public DbSet<Kit> Kits => Set<Kit>();
    public DbSet<KitLot> KitLots => Set<KitLot>();
    public DbSet<KitLotContent> KitLotContents => Set<KitLotContent>();
    public DbSet<PriceRules> PriceRules => Set<PriceRules>();
    public DbSet<SalesChannel> SalesChannels => Set<SalesChannel>();
    public DbSet<SalesChannelFee> SalesChannelFees => Set<SalesChannelFee>();
    public DbSet<ChannelTerms> ChannelTerms => Set<ChannelTerms>();
    public DbSet<PriceTag> PriceTags => Set<PriceTag>();
    public DbSet<MarginFloorEntry> MarginFloors => Set<MarginFloorEntry>();
    public DbSet<BookMethod> BookMethods => Set<BookMethod>();
    public DbSet<BookYear> BookYears => Set<BookYear>();
    public DbSet<WriteDown> WriteDowns => Set<WriteDown>();
    public DbSet<BatchLoss> BatchLosses => Set<BatchLoss>();
    public DbSet<BroughtFile> BroughtFiles => Set<BroughtFile>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("person_claims");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("person_logins");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("person_tokens");
        builder.Entity<IdentityUserPasskey<Guid>>().ToTable("person_passkeys");
        builder.ApplyConfigurationsFromAssembly(typeof(StudioDb).Assembly);
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        // Unit costs keep what they were worked out to; numeric without scale stores a decimal unchanged.
        configurationBuilder.Properties<decimal>().HaveColumnType("numeric");
}
