using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Queue;

internal sealed class JobMapping : IEntityTypeConfiguration<Job>
{
    public void Configure(EntityTypeBuilder<Job> builder)
    {
        builder.HasKey(row => row.Id);
        builder.Property(row => row.Id).UseIdentityAlwaysColumn();
        builder.Property(row => row.Kind).HasMaxLength(40);
        builder.HasIndex(row => new { row.Kind, row.Subject }, "ux_jobs_one_open").IsUnique().HasFilter("done_at is null and failure is null");
        builder.HasIndex(row => new { row.NotBefore, row.Id }, "ix_jobs_open").HasFilter("done_at is null and failure is null");
    }
}
