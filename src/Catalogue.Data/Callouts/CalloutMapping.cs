using Catalogue.Data.Teardowns;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Photos;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Callouts;

internal sealed class CalloutMapping : IEntityTypeConfiguration<Callout>
{
    public void Configure(EntityTypeBuilder<Callout> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasOne<Photo>().WithMany().HasForeignKey(row => new { row.RevisionId, row.PhotoId }).OnDelete(DeleteBehavior.Cascade);
    }
}
