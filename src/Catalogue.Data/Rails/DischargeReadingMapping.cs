using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Rails;

internal sealed class DischargeReadingMapping : IEntityTypeConfiguration<DischargeReading>
{
    public void Configure(EntityTypeBuilder<DischargeReading> builder)
    {
        builder.HasContentKey(row => row.Id);
        builder.Property(row => row.Version).IsRowVersion();
        builder.Ignore(row => row.Volts);
        builder.Ignore(row => row.FreshUntil);
        builder.Property(row => row.Place).HasMaxLength(DischargeReadingForm.MaxPlaceLength);
    }
}
