using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Teardowns;

internal sealed class RevisionMapping : IEntityTypeConfiguration<Revision>
{
    public void Configure(EntityTypeBuilder<Revision> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Title).HasMaxLength(Revision.MaxTitleLength);
        builder.Property(row => row.Standfirst).HasMaxLength(Revision.MaxStandfirstLength);
        builder.HasIndex(row => new { row.TeardownId, row.Number }).IsUnique();
        builder.HasIndex(row => row.TeardownId, "ux_revisions_one_published").IsUnique().HasFilter("state = 'published'");
        builder.HasIndex(row => row.TeardownId, "ux_revisions_one_draft").IsUnique().HasFilter("state in ('draft', 'in_review')");
        builder.HasIndex(row => new { row.PublishedAt, row.Id }, "ix_revisions_latest").HasFilter("state = 'published'");
        builder.HasOne<Teardown>().WithMany().HasForeignKey(row => row.TeardownId).OnDelete(DeleteBehavior.Cascade);
    }
}
