using Catalogue.Data.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Imports;

internal sealed class ImportRunMapping : IEntityTypeConfiguration<ImportRun>
{
    public void Configure(EntityTypeBuilder<ImportRun> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.Property(row => row.FileName).HasMaxLength(255);
        builder.Property(row => row.Options).HasConversion(new StoredJsonConverter<IReadOnlyDictionary<string, string>>(), StoredJsonConverter<IReadOnlyDictionary<string, string>>.Comparer).HasColumnType("jsonb");
        builder.Property(row => row.Report).HasColumnType("jsonb");
        builder.Property(row => row.Reason).HasMaxLength(ImportRun.MaxReasonLength);
        builder.HasIndex(row => new { row.Who, row.Id });
    }
}
