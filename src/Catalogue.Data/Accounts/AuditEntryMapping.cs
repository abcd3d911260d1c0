using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Accounts;

internal sealed class AuditEntryMapping : IEntityTypeConfiguration<AuditEntry>
{
    public void Configure(EntityTypeBuilder<AuditEntry> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).UseIdentityAlwaysColumn();
        builder.HasIndex(row => new { row.TeardownId, row.Id });
    }
}
