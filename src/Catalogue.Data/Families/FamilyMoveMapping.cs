using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilyMoveMapping : IEntityTypeConfiguration<FamilyMove>
{
    public void Configure(EntityTypeBuilder<FamilyMove> builder)
    {
        builder.HasKey(row => new { row.RevisionId, row.ComponentId });
        builder.HasOne<BoardComponent>().WithMany().HasForeignKey(row => new { row.RevisionId, row.ComponentId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Restrict);
    }
}
