using Catalogue.Data.Accounts;
using Catalogue.Data.Articles;
using Catalogue.Data.Components.Lists;
using Catalogue.Data.Conversions;
using Catalogue.Data.Families;
using Catalogue.Data.Figures;
using Catalogue.Data.Imports;
using Catalogue.Data.Photos;
using Catalogue.Data.Publishing;
using Catalogue.Data.Queue;
using Catalogue.Domain;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data;

/// <summary>The database as EF Core sees it. Used only within this project: pages and endpoints take queries and changes.</summary>
/// <param name="options">Made by <see cref="CatalogueDatabase"/>.</param>
public sealed class CatalogueContext(DbContextOptions<CatalogueContext> options)
    : IdentityDbContext<Account, IdentityRole<Guid>, Guid>(options), IDataProtectionKeyContext
{
    public DbSet<ApiToken> ApiTokens => Set<ApiToken>();

    public DbSet<AuditEntry> AuditEntries => Set<AuditEntry>();

    public DbSet<BenchTest> BenchTests => Set<BenchTest>();

    public DbSet<Board> Boards => Set<Board>();

    public DbSet<Callout> Callouts => Set<Callout>();

    public DbSet<Claim> Claims => Set<Claim>();

    public DbSet<BoardComponent> Components => Set<BoardComponent>();

    public DbSet<CurrentFigure> CurrentFigures => Set<CurrentFigure>();

    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    public DbSet<DischargeReading> DischargeReadings => Set<DischargeReading>();

    public DbSet<PartFamily> Families => Set<PartFamily>();

    public DbSet<FamilyAlias> FamilyAliases => Set<FamilyAlias>();

    public DbSet<FamilyLink> FamilyLinks => Set<FamilyLink>();

    public DbSet<FamilyMaker> FamilyMakers => Set<FamilyMaker>();

    public DbSet<FamilyMerge> FamilyMerges => Set<FamilyMerge>();

    public DbSet<FamilyMove> FamilyMoves => Set<FamilyMove>();

    public DbSet<FamilyRating> FamilyRatings => Set<FamilyRating>();

    public DbSet<FamilyRelation> FamilyRelations => Set<FamilyRelation>();

    public DbSet<FamilySplit> FamilySplits => Set<FamilySplit>();

    public DbSet<FamilySplitPart> FamilySplitParts => Set<FamilySplitPart>();

    public DbSet<Figure> Figures => Set<Figure>();

    public DbSet<Finding> Findings => Set<Finding>();

    public DbSet<ImportedArticle> ImportedArticles => Set<ImportedArticle>();

    public DbSet<ImportRun> ImportRuns => Set<ImportRun>();

    /// <summary>What people said of the columns of component lists.</summary>
    public DbSet<ListLayout> ListLayouts => Set<ListLayout>();

    public DbSet<MeasuredPath> IsolationPaths => Set<MeasuredPath>();

    public DbSet<Job> Jobs => Set<Job>();

    public DbSet<LabSettings> LabSettings => Set<LabSettings>();

    public DbSet<Maker> Makers => Set<Maker>();

    public DbSet<MakerAlias> MakerAliases => Set<MakerAlias>();

    public DbSet<MediaFile> MediaFiles => Set<MediaFile>();

    public DbSet<OneTimeSignIn> OneTimeSignIns => Set<OneTimeSignIn>();

    public DbSet<Photo> Photos => Set<Photo>();

    public DbSet<Port> Ports => Set<Port>();

    public DbSet<Product> Products => Set<Product>();

    public DbSet<Publication> Publications => Set<Publication>();

    public DbSet<Rail> Rails => Set<Rail>();

    public DbSet<RailQuantity> RailQuantities => Set<RailQuantity>();

    public DbSet<Rating> Ratings => Set<Rating>();

    public DbSet<Rendition> Renditions => Set<Rendition>();

    public DbSet<Revision> Revisions => Set<Revision>();

    public DbSet<SiteState> SiteStates => Set<SiteState>();

    public DbSet<Step> Steps => Set<Step>();

    public DbSet<Teardown> Teardowns => Set<Teardown>();

    public DbSet<TopMark> TopMarks => Set<TopMark>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.HasPostgresExtension("pg_trgm");
        builder.ApplyConfigurationsFromAssembly(typeof(CatalogueContext).Assembly);
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        base.ConfigureConventions(configurationBuilder);
        foreach (var type in typeof(ITypedId<>).Assembly.GetExportedTypes())
        {
            if (type.IsValueType && IsTypedId(type))
                configurationBuilder.Properties(type).HaveConversion(typeof(TypedIdConverter<>).MakeGenericType(type));
            else if (type.IsEnum && type != typeof(Unit))
                configurationBuilder.Properties(type).HaveConversion(typeof(CodeConverter<>).MakeGenericType(type)).HaveMaxLength(40);
        }

        configurationBuilder.Properties<TokenScope>().HaveConversion<CodeConverter<TokenScope>>().HaveMaxLength(40);
        configurationBuilder.Properties<Unit>().HaveConversion<UnitConverter>().HaveMaxLength(10);
    }

    private static bool IsTypedId(Type type) =>
        type.GetInterfaces().Any(contract => contract.IsGenericType && contract.GetGenericTypeDefinition() == typeof(ITypedId<>));
}
