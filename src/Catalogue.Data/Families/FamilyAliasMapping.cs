using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyAliasMapping : IEntityTypeConfiguration<FamilyAlias>
{
    public void Configure(EntityTypeBuilder<FamilyAlias> builder)
    {
        // A key cannot change; a split takes aliases along.
        builder.HasKey(row => row.MatchKey);
        builder.Property(row => row.Kind).HasDefaultValue(FamilyNameKind.OtherNumber).HasSentinel(FamilyNameKind.BaseNumber);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMarkingKeys("match_key");
    }
}
