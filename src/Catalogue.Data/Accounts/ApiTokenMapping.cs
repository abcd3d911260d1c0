using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Accounts;

internal sealed class ApiTokenMapping : IEntityTypeConfiguration<ApiToken>
{
    public void Configure(EntityTypeBuilder<ApiToken> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Name).HasMaxLength(120);
        builder.HasIndex(row => row.TokenHash).IsUnique();
    }
}
