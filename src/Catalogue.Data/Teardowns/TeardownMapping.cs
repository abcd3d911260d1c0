using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Teardowns;

internal sealed class TeardownMapping : IEntityTypeConfiguration<Teardown>
{
    public void Configure(EntityTypeBuilder<Teardown> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Slug).HasMaxLength(Slug.MaxLength);
        builder.HasIndex(row => row.Slug).IsUnique();
        builder.Property(row => row.Number).UseIdentityAlwaysColumn();
        builder.HasIndex(row => row.Number).IsUnique();
        builder.Property(row => row.SerialNumber).HasMaxLength(120);
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasOne<Product>().WithMany().HasForeignKey(row => row.ProductId).OnDelete(DeleteBehavior.Restrict);
    }
}
