using Catalogue.Data.Teardowns;
using Catalogue.Domain.Findings;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Findings;

internal sealed class FindingMapping : IEntityTypeConfiguration<Finding>
{
    public void Configure(EntityTypeBuilder<Finding> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Heading).HasMaxLength(200);
    }
}
