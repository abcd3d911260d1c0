using Catalogue.Data.Conversions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Components;

internal sealed class BoardComponentMapping : IEntityTypeConfiguration<BoardComponent>
{
    public void Configure(EntityTypeBuilder<BoardComponent> builder)
    {
        builder.ToTable("components");
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.MarkingAsRead).HasMaxLength(BoardComponent.MaxMarkingLength);
        builder.Property(row => row.ImportedRow).HasConversion(new StoredJsonConverter<IReadOnlyList<ImportedCell>>(), StoredJsonConverter<IReadOnlyList<ImportedCell>>.Comparer).HasColumnType("jsonb");
        builder.HasIndex(row => new { row.RevisionId, row.BoardId, row.Position });
        builder.HasIndex(row => new { row.FamilyId, row.RevisionId });
        builder.HasOne<Board>().WithMany().HasForeignKey(row => new { row.RevisionId, row.BoardId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.FamilyId).OnDelete(DeleteBehavior.Restrict);
    }
}
