using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Photos;

internal sealed class RenditionMapping : IEntityTypeConfiguration<Rendition>
{
    public void Configure(EntityTypeBuilder<Rendition> builder)
    {
        builder.HasKey(row => new { row.Sha256, row.WidthPixels });
        builder.HasOne<MediaFile>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Cascade);
    }
}
