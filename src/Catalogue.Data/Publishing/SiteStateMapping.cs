using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Publishing;

internal sealed class SiteStateMapping : IEntityTypeConfiguration<SiteState>
{
    public void Configure(EntityTypeBuilder<SiteState> builder)
    {
        builder.ToTable("site_state");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.HasData(new SiteState { Id = 1, SiteVersion = 1 });
    }
}
