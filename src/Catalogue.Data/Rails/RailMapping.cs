using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Rails;

internal sealed class RailMapping : IEntityTypeConfiguration<Rail>
{
    public void Configure(EntityTypeBuilder<Rail> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Name).HasMaxLength(120);
        builder.HasIndex(row => new { row.RevisionId, row.Name }).IsUnique();
    }
}
