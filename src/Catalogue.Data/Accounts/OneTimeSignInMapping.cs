using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Accounts;

internal sealed class OneTimeSignInMapping : IEntityTypeConfiguration<OneTimeSignIn>
{
    public void Configure(EntityTypeBuilder<OneTimeSignIn> builder)
    {
        builder.HasKey(row => row.CodeHash);
        builder.HasOne<Account>().WithMany().HasForeignKey(row => row.AccountId).OnDelete(DeleteBehavior.Cascade);
    }
}
