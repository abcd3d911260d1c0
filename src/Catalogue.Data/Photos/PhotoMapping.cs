using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Photos;

internal sealed class PhotoMapping : IEntityTypeConfiguration<Photo>
{
    public void Configure(EntityTypeBuilder<Photo> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Caption).HasMaxLength(Photo.MaxCaptionLength);
        builder.HasIndex(row => row.Sha256);
        builder.HasOne<MediaFile>().WithMany().HasForeignKey(row => row.Sha256).OnDelete(DeleteBehavior.Restrict);
    }
}
