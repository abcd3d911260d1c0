using Catalogue.Data.Accounts;
using Catalogue.Data.Makers;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Opens a teardown with its first draft. The brand is opened where it is new; the same product is used again.</summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class CreateTeardown(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    // Slugs and products are chosen under one lock, so that two people who begin at once get two of each.
    private const long CreationLock = 7_341_002;

    /// <summary>What is asked for; every text must be there.</summary>
    /// <param name="Brand">The brand.</param>
    /// <param name="Name">The product's name.</param>
    /// <param name="Model">The model designation.</param>
    /// <param name="Category">The category.</param>
    /// <param name="Title">The title of the record.</param>
    public sealed record Request(string? Brand, string? Name, string? Model, ProductCategory Category, string? Title);

    /// <summary>A teardown that was opened.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Slug">Its address.</param>
    public sealed record Created(TeardownId Id, string Slug);

    /// <summary>Opens one; each call opens another.</summary>
    public Task<ChangeOutcome<Created>> RunAsync(Request request, Editor who, CancellationToken cancellationToken = default) => RunAsync(request, who, null, cancellationToken);

    /// <summary>Opens one with content, in one transaction.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="who">Who opens it.</param>
    /// <param name="fill">Adds to the new draft without saving; null leaves it empty.</param>
    /// <param name="cancellationToken">Cancels it as a whole.</param>
    internal async Task<ChangeOutcome<Created>> RunAsync(Request request, Editor who, Func<Draft, CancellationToken, Task>? fill, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(who);
        var check = new FormCheck();
        var brand = check.Need(request.Brand, "product.brand", Maker.MaxNameLength);
        var name = check.Need(request.Name, "product.name", Product.MaxNameLength);
        var model = check.Need(request.Model, "product.model", Product.MaxNameLength);
        var title = check.Need(request.Title, "title", Revision.MaxTitleLength);
        if (check.Refusal is { } refusal)
            return new ChangeOutcome<Created>.Refused(refusal.Field, refusal.Reason);
        if (MakerName.Key(brand).Length == 0)
            return new ChangeOutcome<Created>.Refused("product.brand", "product.brand holds no letter and no digit; give the brand as it is written.");

        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await LockAsync(context, cancellationToken);
        var product = await FindOrAddProductAsync(context, brand, name, model, request.Category, cancellationToken);
        var now = clock.GetUtcNow();
        var teardown = new Teardown
        {
            Id = TeardownId.New(),
            ProductId = product.Id,
            Slug = await FreeSlugAsync(context, Slug.From($"{brand} {name}", "teardown"), cancellationToken),
            CreatedAt = now,
        };
        context.Teardowns.Add(teardown);
        var revision = new Revision
        {
            Id = RevisionId.New(),
            TeardownId = teardown.Id,
            Number = 1,
            State = RevisionState.Draft,
            Title = title,
            Brand = brand,
            ProductName = name,
            Model = model,
            Category = request.Category,
            OpenedAt = now,
        };
        context.Revisions.Add(revision);
        context.AuditEntries.Add(new AuditEntry { At = now, Who = who.Name, Action = "create teardown", TeardownId = teardown.Id });
        await context.SaveChangesAsync(cancellationToken);
        if (fill is not null)
        {
            await fill(new Draft(context, teardown, revision, null), cancellationToken);
            await context.SaveChangesAsync(cancellationToken);
        }

        await transaction.CommitAsync(cancellationToken);
        return new ChangeOutcome<Created>.Done(new Created(teardown.Id, teardown.Slug));
    }

    /// <summary>Takes the lock under which addresses, brands and products are chosen, until the transaction ends.</summary>
    internal static Task LockAsync(CatalogueContext context, CancellationToken cancellationToken) =>
        context.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({CreationLock})", cancellationToken);

    /// <summary>The product of that brand, name and model, added to the context with its brand where it is new.</summary>
    internal static async Task<Product> FindOrAddProductAsync(CatalogueContext context, string brand, string name, string model, ProductCategory category, CancellationToken cancellationToken)
    {
        var maker = await FindOrAddMaker.RunAsync(context, brand, cancellationToken);
        var identity = MakerName.Key(name) + "/" + MakerName.Key(model);
        if (await context.Products.SingleOrDefaultAsync(row => row.BrandId == maker.Id && row.IdentityKey == identity, cancellationToken) is { } known)
            return known;
        var product = new Product { Id = ProductId.New(), BrandId = maker.Id, Name = name, Model = model, Category = category, IdentityKey = identity };
        context.Products.Add(product);
        return product;
    }

    /// <summary>The first address of a stem that no teardown has: the stem itself, or the stem and a number.</summary>
    internal static async Task<string> FreeSlugAsync(CatalogueContext context, string stem, CancellationToken cancellationToken)
    {
        var pattern = stem + "-%";
        var taken = await context.Teardowns.Where(row => row.Slug == stem || EF.Functions.Like(row.Slug, pattern)).Select(row => row.Slug).ToListAsync(cancellationToken);
        var attempt = 1;
        while (taken.Contains(Slug.Numbered(stem, attempt)))
            attempt++;
        return Slug.Numbered(stem, attempt);
    }
}
