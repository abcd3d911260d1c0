using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Articles;

internal sealed class ImportedArticleMapping : IEntityTypeConfiguration<ImportedArticle>
{
    public void Configure(EntityTypeBuilder<ImportedArticle> builder)
    {
        builder.HasKey(row => row.TeardownId);
        builder.Property(row => row.FileName).HasMaxLength(ImportedArticle.MaxFileNameLength);
        builder.Property(row => row.Encoding).HasMaxLength(40);
        builder.Property(row => row.Sha256).HasMaxLength(64);
        builder.HasIndex(row => row.RunId).IsUnique();
        builder.HasIndex(row => row.Sha256);
        builder.HasOne<Teardown>().WithOne().HasForeignKey<ImportedArticle>(row => row.TeardownId).OnDelete(DeleteBehavior.Cascade);
    }
}
