using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Components;

internal sealed class RatingMapping : IEntityTypeConfiguration<Rating>
{
    public void Configure(EntityTypeBuilder<Rating> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Ignore(row => row.Interval);
        builder.HasOne<BoardComponent>().WithMany().HasForeignKey(row => new { row.RevisionId, row.ComponentId }).OnDelete(DeleteBehavior.Cascade);
    }
}
