using Catalogue.Domain.Makers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Makers;

internal sealed class MakerMapping : IEntityTypeConfiguration<Maker>
{
    public void Configure(EntityTypeBuilder<Maker> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Name).HasMaxLength(Maker.MaxNameLength);
        builder.HasIndex(row => row.NameKey).IsUnique();
        builder.HasIndex(row => row.Slug).IsUnique();
        builder.HasIndex(row => row.NameKey, "ix_makers_name_key_trigram").HasMethod("gin").HasOperators("gin_trgm_ops");
    }
}
