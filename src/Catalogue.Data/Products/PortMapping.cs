using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Products;

internal sealed class PortMapping : IEntityTypeConfiguration<Port>
{
    public void Configure(EntityTypeBuilder<Port> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Name).HasMaxLength(120);
        builder.Property(row => row.Kind).HasMaxLength(60);
    }
}
