using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyAliasMapping : IEntityTypeConfiguration<FamilyAlias>
{
    public void Configure(EntityTypeBuilder<FamilyAlias> builder)
    {
        builder.HasKey(row => new { row.FamilyId, row.MatchKey });
        builder.HasIndex(row => row.MatchKey).IsUnique();
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
    }
}
