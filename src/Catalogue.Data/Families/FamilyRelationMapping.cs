using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyRelationMapping : IEntityTypeConfiguration<FamilyRelation>
{
    public void Configure(EntityTypeBuilder<FamilyRelation> builder)
    {
        builder.HasKey(row => new { row.OneId, row.OtherId });
        builder.Property(row => row.Note).HasMaxLength(FamilyRelation.MaxNoteLength);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.OneId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.OtherId).OnDelete(DeleteBehavior.Cascade);
    }
}
