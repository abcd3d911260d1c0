using Catalogue.Data.Conversions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Figures;

internal sealed class FigureMapping : IEntityTypeConfiguration<Figure>
{
    public void Configure(EntityTypeBuilder<Figure> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Rule).HasMaxLength(60);
        builder.Property(row => row.Missing).HasConversion(new StoredJsonConverter<IReadOnlyList<MissingInput>>(), StoredJsonConverter<IReadOnlyList<MissingInput>>.Comparer).HasColumnType("jsonb");
        builder.Property(row => row.Working).HasConversion(new StoredJsonConverter<Working>(), StoredJsonConverter<Working>.Comparer).HasColumnType("jsonb");
        builder.HasIndex(row => new { row.RevisionId, row.ComponentId, row.Rule }).IsUnique();
        builder.HasIndex(row => new { row.RevisionId, row.RailId, row.Rule }).IsUnique();
        builder.HasOne<Rail>().WithMany().HasForeignKey(row => new { row.RevisionId, row.RailId }).OnDelete(DeleteBehavior.Cascade);
        builder.ToTable(table => table.HasCheckConstraint("ck_figures_subject", "(component_id is null) <> (rail_id is null)"));
        builder.HasOne<BoardComponent>().WithMany().HasForeignKey(row => new { row.RevisionId, row.ComponentId }).OnDelete(DeleteBehavior.Cascade);
    }
}
