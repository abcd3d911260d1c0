using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Families;

/// <summary>The columns that numbers are found by although a character was misread or lost: computed by the database, so that every way to write a row fills them.</summary>
internal static class MarkingKeyColumns
{
    /// <summary>Adds the letters of a column and the keys of those letters, with an index over the keys.</summary>
    public static void HasMarkingKeys<TEntity>(this EntityTypeBuilder<TEntity> builder, string column)
        where TEntity : class
    {
        builder.Property<string>("Letters").HasComputedColumnSql($"marking_letters({column})", stored: true);
        builder.Property<string[]>("MarkingKeys").HasComputedColumnSql($"marking_keys(marking_letters({column}))", stored: true);
        builder.HasIndex("MarkingKeys").HasMethod("gin");
    }
}
