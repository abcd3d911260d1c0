using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

internal sealed class PartFamilyMapping : IEntityTypeConfiguration<PartFamily>
{
    public void Configure(EntityTypeBuilder<PartFamily> builder)
    {
        builder.ToTable("families");
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Property(row => row.Name).HasMaxLength(PartFamily.MaxNameLength);
        builder.HasIndex(row => row.MatchKey).IsUnique();
        builder.HasIndex(row => row.Slug).IsUnique();
        builder.HasIndex(row => row.SearchKey, "ix_families_search_key_prefix").HasOperators("text_pattern_ops");
        builder.HasIndex(row => row.SearchKey, "ix_families_search_key_trigram").HasDatabaseName("ix_families_search_key_trigram").HasMethod("gin").HasOperators("gin_trgm_ops");
        builder.Property(row => row.Note).HasMaxLength(PartFamily.MaxNoteLength);
        builder.Property(row => row.Packages).HasDefaultValueSql("'{}'");
        builder.HasMarkingKeys("match_key");
        builder.HasOne<PartFamily>().WithMany().HasForeignKey(row => row.MergedIntoId).OnDelete(DeleteBehavior.Restrict);
    }
}
