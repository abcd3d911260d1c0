using Catalogue.Data.Conversions;
using Catalogue.Domain.Derating;
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
        builder.Property(row => row.ChangedLines).HasConversion(new StoredJsonConverter<IReadOnlyDictionary<string, double>>(), StoredJsonConverter<IReadOnlyDictionary<string, double>>.Comparer).HasColumnType("jsonb").HasDefaultValueSql("'{}'");
        builder.Property(row => row.DeratingPreset).HasDefaultValue(DeratingPreset.Industrial);
        builder.HasData(new LabSettings { Id = 1, LabName = "Teardown catalogue" });
    }
}
