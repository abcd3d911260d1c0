using System.Linq.Expressions;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Catalogue.Data.Teardowns;

/// <summary>
/// What all content of revisions has in common: the key (revision, id), an index by id alone, and the tie to its revision. References
/// between content rows that may be empty are not modelled here: the migration adds them, since clearing only one column of a composite key
/// is beyond the model.
/// </summary>
internal static class ContentMapping
{
    public static void HasContentKey<T, TId>(this EntityTypeBuilder<T> builder, Expression<Func<T, TId>> id)
        where T : class, IRevisionContent
    {
        var name = ((MemberExpression)id.Body).Member.Name;
        builder.HasKey(nameof(IRevisionContent.RevisionId), name);
        builder.HasIndex(name);
        builder.Property(name).ValueGeneratedNever();
        builder.HasOne<Revision>().WithMany().HasForeignKey(row => row.RevisionId).OnDelete(DeleteBehavior.Cascade);
    }
}
