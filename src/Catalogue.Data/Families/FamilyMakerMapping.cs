using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyMakerMapping : IEntityTypeConfiguration<FamilyMaker>
{
    public void Configure(EntityTypeBuilder<FamilyMaker> builder)
    {
        builder.HasKey(row => new { row.FamilyId, row.MakerId });
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Maker>().WithMany().HasForeignKey(row => row.MakerId).OnDelete(DeleteBehavior.Cascade);
    }
}
