using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.BenchLogs;

internal sealed class BenchTestMapping : IEntityTypeConfiguration<BenchTest>
{
    public void Configure(EntityTypeBuilder<BenchTest> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Subject).HasMaxLength(120);
    }
}
