using Catalogue.Domain.Makers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Makers;

internal sealed class MakerAliasMapping : IEntityTypeConfiguration<MakerAlias>
{
    public void Configure(EntityTypeBuilder<MakerAlias> builder)
    {
        builder.HasKey(row => new { row.MakerId, row.NameKey });
        builder.HasIndex(row => row.NameKey).IsUnique();
        builder.HasOne<Maker>().WithMany().HasForeignKey(row => row.MakerId).OnDelete(DeleteBehavior.Cascade);
    }
}
