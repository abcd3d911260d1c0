using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Publishing;

internal sealed class PublicationMapping : IEntityTypeConfiguration<Publication>
{
    public void Configure(EntityTypeBuilder<Publication> builder)
    {
        builder.HasKey(row => row.Id);
        builder.HasIndex(row => row.RevisionId).IsUnique();
        builder.HasIndex(row => row.PublishedAt);
        builder.HasOne<Revision>().WithMany().HasForeignKey(row => row.RevisionId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Teardown>().WithMany().HasForeignKey(row => row.TeardownId).OnDelete(DeleteBehavior.Restrict);
    }
}
