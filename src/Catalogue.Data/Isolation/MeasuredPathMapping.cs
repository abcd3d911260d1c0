using Catalogue.Data.Teardowns;
using Catalogue.Domain.Isolation;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Isolation;

internal sealed class MeasuredPathMapping : IEntityTypeConfiguration<MeasuredPath>
{
    public void Configure(EntityTypeBuilder<MeasuredPath> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        // Both names are words of SQL.
        builder.Property(row => row.From).HasColumnName("one_end").HasMaxLength(MeasuredPathForm.MaxEndLength);
        builder.Property(row => row.To).HasColumnName("other_end").HasMaxLength(MeasuredPathForm.MaxEndLength);
    }
}
