using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Publishing;

internal sealed class LabSettingsMapping : IEntityTypeConfiguration<LabSettings>
{
    public void Configure(EntityTypeBuilder<LabSettings> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.HasData(new LabSettings { Id = 1, LabName = "Teardown catalogue" });
    }
}
