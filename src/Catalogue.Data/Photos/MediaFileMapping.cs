using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Photos;

internal sealed class MediaFileMapping : IEntityTypeConfiguration<MediaFile>
{
    public void Configure(EntityTypeBuilder<MediaFile> builder)
    {
        builder.HasKey(row => row.Sha256);
        builder.Property(row => row.Sha256).HasMaxLength(64);
        builder.Property(row => row.Kind).HasMaxLength(10);
    }
}
