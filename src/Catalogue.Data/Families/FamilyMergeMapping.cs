using Catalogue.Data.Conversions;
using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyMergeMapping : IEntityTypeConfiguration<FamilyMerge>
{
    public void Configure(EntityTypeBuilder<FamilyMerge> builder)
    {
        builder.HasKey(row => row.Id);
        builder.PrimitiveCollection(row => row.Followers).ElementType(element => element.HasConversion<TypedIdConverter<FamilyId>>());
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FromId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.IntoId).OnDelete(DeleteBehavior.Restrict);
    }
}
