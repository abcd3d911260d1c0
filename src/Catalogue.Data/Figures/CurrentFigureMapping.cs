using Catalogue.Data.Conversions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Figures;

internal sealed class CurrentFigureMapping : IEntityTypeConfiguration<CurrentFigure>
{
    public void Configure(EntityTypeBuilder<CurrentFigure> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.HasIndex(row => new { row.RevisionId, row.ComponentId, row.Rule }).IsUnique();
        builder.HasIndex(row => new { row.RevisionId, row.RailId, row.Rule }).IsUnique();
        builder.ToTable(table => table.HasCheckConstraint("ck_current_figures_subject", "(component_id is null) <> (rail_id is null)"));
        builder.HasOne<Rail>().WithMany().HasForeignKey(row => new { row.RevisionId, row.RailId }).OnDelete(DeleteBehavior.Cascade);
        builder.Property(row => row.Rule).HasMaxLength(60);
        builder.Property(row => row.Missing).HasConversion(new StoredJsonConverter<IReadOnlyList<MissingInput>>(), StoredJsonConverter<IReadOnlyList<MissingInput>>.Comparer).HasColumnType("jsonb");
        builder.Property(row => row.Working).HasConversion(new StoredJsonConverter<Working>(), StoredJsonConverter<Working>.Comparer).HasColumnType("jsonb");
        builder.HasIndex(row => new { row.Rule, row.Low, row.ComponentId });
        builder.HasIndex(row => new { row.Rule, row.Nominal, row.ComponentId });
        builder.HasOne<BoardComponent>().WithMany().HasForeignKey(row => new { row.RevisionId, row.ComponentId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Teardown>().WithMany().HasForeignKey(row => row.TeardownId).OnDelete(DeleteBehavior.Cascade);
    }
}
