using Catalogue.Domain.Makers;
using Catalogue.Domain.Products;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Products;

internal sealed class ProductMapping : IEntityTypeConfiguration<Product>
{
    public void Configure(EntityTypeBuilder<Product> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Name).HasMaxLength(Product.MaxNameLength);
        builder.Property(row => row.Model).HasMaxLength(Product.MaxNameLength);
        builder.HasIndex(row => new { row.BrandId, row.IdentityKey }).IsUnique();
        builder.HasOne<Maker>().WithMany().HasForeignKey(row => row.BrandId).OnDelete(DeleteBehavior.Restrict);
    }
}
