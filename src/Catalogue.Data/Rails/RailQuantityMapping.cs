using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Rails;

internal sealed class RailQuantityMapping : IEntityTypeConfiguration<RailQuantity>
{
    public void Configure(EntityTypeBuilder<RailQuantity> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Ignore(row => row.Interval);
        builder.HasIndex(row => new { row.RevisionId, row.RailId, row.Kind }).IsUnique();
        builder.HasOne<Rail>().WithMany().HasForeignKey(row => new { row.RevisionId, row.RailId }).OnDelete(DeleteBehavior.Cascade);
    }
}
