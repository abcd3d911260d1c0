using Catalogue.Data.Conversions;
using Catalogue.Domain.Components.Lists;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Components.Lists;

internal sealed class ListLayoutMapping : IEntityTypeConfiguration<ListLayout>
{
    public void Configure(EntityTypeBuilder<ListLayout> builder)
    {
        builder.HasKey(row => row.Key);
        builder.Property(row => row.Key).HasMaxLength(64);
        builder.Property(row => row.Meanings)
            .HasConversion(new StoredJsonConverter<IReadOnlyDictionary<string, ColumnMeaning?>>(), StoredJsonConverter<IReadOnlyDictionary<string, ColumnMeaning?>>.Comparer)
            .HasColumnType("jsonb");
    }
}
