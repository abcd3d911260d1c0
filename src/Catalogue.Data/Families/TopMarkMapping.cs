using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class TopMarkMapping : IEntityTypeConfiguration<TopMark>
{
    public void Configure(EntityTypeBuilder<TopMark> builder)
    {
        builder.ToTable("family_top_marks");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Code).HasMaxLength(TopMark.MaxCodeLength);
        builder.Property(row => row.Package).HasMaxLength(200);
        builder.Property(row => row.Source).HasMaxLength(500);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Maker>().WithMany().HasForeignKey(row => row.MakerId).OnDelete(DeleteBehavior.SetNull);
        builder.HasMarkingKeys("code");
    }
}
