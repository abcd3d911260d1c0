using Catalogue.Data.Accounts;
using Catalogue.Data.Archives;
using Catalogue.Data.Articles;
using Catalogue.Data.BenchLogs;
using Catalogue.Data.Callouts;
using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Figures;
using Catalogue.Data.Findings;
using Catalogue.Data.Imports;
using Catalogue.Data.Isolation;
using Catalogue.Data.Makers;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Publishing;
using Catalogue.Data.Questions;
using Catalogue.Data.Queue;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Npgsql;

namespace Catalogue.Data;

/// <summary>Registers the queries and changes of this project.</summary>
public static class CatalogueServices
{
    /// <summary>
    /// Adds the context factory over the registered <see cref="NpgsqlDataSource"/>, and every query and change. All of them hold no state and make a
    /// context of their own for each run.
    /// </summary>
    public static IServiceCollection AddCatalogueData(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        // The account library shapes its tables by this option, so it belongs to the model, wherever a context is made.
        services.Configure<IdentityOptions>(options => options.Stores.SchemaVersion = IdentitySchemaVersions.Version3);
        services.AddDbContextFactory<CatalogueContext>((provider, options) => CatalogueDatabase.Configure(options, provider.GetRequiredService<NpgsqlDataSource>()));
        foreach (var type in new[]
        {
            typeof(AskQuery), typeof(BenchTestChanges), typeof(BoardChanges), typeof(CalloutChanges), typeof(ChangeSettings), typeof(ClaimChanges),
            typeof(ComponentCandidatesQuery), typeof(ComponentChanges), typeof(CreateTeardown), typeof(DischargeReadingChanges), typeof(DraftEditing), typeof(ExportArchive), typeof(FamiliesQuery),
            typeof(FamilyChanges), typeof(FamilyEditing), typeof(FamilyHistoryQuery), typeof(FamilyKnowledgeQuery), typeof(FamilyNeighboursQuery), typeof(FamilyQuery),
            typeof(FamilyRecordQuery), typeof(FindingChanges), typeof(IdentifyComponent), typeof(IdentifyParts), typeof(ImportArchive), typeof(ImportComponents), typeof(ImportedArticleQuery), typeof(ImportRuns), typeof(JobQueue), typeof(MakerChanges), typeof(MakerQuery), typeof(MakersQuery),
            typeof(MarkingCandidatesQuery), typeof(MarkingsQuery), typeof(MeasuredPathChanges), typeof(MergeFamilies), typeof(OneTimeSignIns), typeof(OpenArticle),
            typeof(PhotoChanges), typeof(PlacePhoto), typeof(PortChanges),
            typeof(ProductsQuery), typeof(PublishTeardown), typeof(RailChanges), typeof(RatingChanges), typeof(ReadyQuestionsQuery), typeof(RecomputeEverything),
            typeof(RenditionQuery),
            typeof(RenditionStore), typeof(SettingsQuery), typeof(SiteCountsQuery), typeof(SplitFamily), typeof(StepChanges), typeof(TeardownChanges), typeof(TeardownRecordQuery), typeof(TeardownsQuery),
            typeof(Tokens), typeof(UnidentifiedQuery),
        })
        {
            services.AddSingleton(type);
        }

        return services;
    }
}
