using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class FamilySplitPartMapping : IEntityTypeConfiguration<FamilySplitPart>
{
    public void Configure(EntityTypeBuilder<FamilySplitPart> builder)
    {
        builder.HasKey(row => new { row.SplitId, row.RevisionId, row.ComponentId });
        builder.HasOne<FamilySplit>().WithMany().HasForeignKey(row => row.SplitId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<BoardComponent>().WithMany().HasForeignKey(row => new { row.RevisionId, row.ComponentId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.BeforeId).OnDelete(DeleteBehavior.Restrict);
    }
}
