using Catalogue.Data.Conversions;
using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilySplitMapping : IEntityTypeConfiguration<FamilySplit>
{
    public void Configure(EntityTypeBuilder<FamilySplit> builder)
    {
        builder.HasKey(row => row.Id);
        builder.PrimitiveCollection(row => row.TopMarks).ElementType(element => element.HasConversion<TypedIdConverter<TopMarkId>>());
        builder.PrimitiveCollection(row => row.AliasesBefore).ElementType(element => element.HasConversion<TypedIdConverter<FamilyId>>());
        builder.PrimitiveCollection(row => row.TopMarksBefore).ElementType(element => element.HasConversion<TypedIdConverter<FamilyId>>());
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FromId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.ToId).OnDelete(DeleteBehavior.Restrict);
    }
}
