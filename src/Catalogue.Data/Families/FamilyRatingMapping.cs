using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyRatingMapping : IEntityTypeConfiguration<FamilyRating>
{
    public void Configure(EntityTypeBuilder<FamilyRating> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Condition).HasMaxLength(500);
        builder.Property(row => row.Source).HasMaxLength(500);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
    }
}
