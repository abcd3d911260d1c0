using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>What a record of an archive must keep beside its types, so that everything that computes with it may rely on it.</summary>
internal static class ArchiveRecordCheck
{
    /// <summary>Why a record cannot be taken, or null.</summary>
    public static string? Refuse(object record)
    {
        foreach (var property in ArchiveJson.Options.GetTypeInfo(record.GetType()).Properties)
        {
            if (Refuse(property, property.Get!(record)) is { } reason)
                return reason;
        }

        return record switch
        {
            ArchiveLine.Maker maker => maker.Name.Length > Maker.MaxNameLength || MakerName.Key(maker.Name).Length == 0 || maker.Aliases.Any(name => MakerName.Key(name).Length == 0) ? $"Names have 1 to {Maker.MaxNameLength} characters and hold a letter or a digit." : Slugged(maker.Slug),
            ArchiveLine.Family family => Refuse(family),
            ArchiveLine.PhotoFile file => Refuse(file),
            ArchiveLine.Teardown teardown => teardown.Number < 1 ? "“number” is 1 or more." : MakerName.Key(teardown.Product.Brand).Length == 0 || teardown.Product.Brand.Length > Maker.MaxNameLength || teardown.Product.Name.Length is 0 or > Product.MaxNameLength || teardown.Product.Model.Length is 0 or > Product.MaxNameLength ? "“product” has a brand, a name and a model, each of 1 to 120 characters." : Slugged(teardown.Slug),
            Revision revision => revision.Number < 1 ? "“number” is 1 or more." : revision.Title.Length is 0 or > Revision.MaxTitleLength ? $"“title” has 1 to {Revision.MaxTitleLength} characters." : null,
            BoardComponent part => part.ParallelCount < 1 || part.SeriesCount < 1 ? "“parallel_count” and “series_count” are 1 or more." : part.Quantity < 0 ? "“quantity” is 0 or more." : null,
            Rating rating => InOrder(rating.Low, rating.Nominal, rating.High) ?? rating.Kind.Refuse(rating.Interval),
            RailQuantity quantity => InOrder(quantity.Low, quantity.Nominal, quantity.High) ?? quantity.Kind.Refuse(quantity.Interval),
            DischargeReading reading => InOrder(reading.LowV, reading.NominalV, reading.HighV) ?? (reading.LowV < 0 || reading.HighV > DischargeReading.HighestVolts ? $"A reading is 0 to {DischargeReading.HighestVolts:0} V." : null),
            MeasuredPath path => InOrder(path.LowMm, path.NominalMm, path.HighMm),
            Figure figure => figure.ComponentId is null == figure.RailId is null ? "A figure is of a component or of a rail." : InOrder(figure.Low, figure.Nominal, figure.High),
            BenchTest test => test.Low is { } low && test.High is { } high && low > high ? "“low”, “value” and “high” stand in that order." : null,
            Photo photo => photo.WidthPixels < 1 || photo.HeightPixels < 1 ? "“width_pixels” and “height_pixels” are 1 or more." : null,
            Callout callout => Refuse(callout),
            Port port => port.Quantity < 1 ? "“quantity” is 1 or more." : null,
            _ => null,
        };
    }

    private static string? Refuse(JsonPropertyInfo property, object? value) => value switch
    {
        double number when !double.IsFinite(number) => $"“{property.Name}” is beyond what a number can hold.",
        double[] numbers when !Array.TrueForAll(numbers, double.IsFinite) => $"“{property.Name}” holds a number beyond what one can hold.",
        string[] texts when Array.Exists(texts, text => text is null) => $"“{property.Name}” holds null where a text is meant.",
        IReadOnlyList<ImportedCell> cells when cells.Any(cell => cell is null) => $"“{property.Name}” holds null where a cell is meant.",
        Working working when !IsWritable(working) => $"“{property.Name}” holds a number beyond what one can hold.",
        _ => null,
    };

    private static string? Refuse(Callout callout)
    {
        if (callout.Number < 1)
            return "“number” is 1 or more.";
        if (callout.Corners.Length % 2 == 1 || callout.Corners.Length > 2 * Callout.MaxCorners)
            return $"“corners” holds pairs, at most {Callout.MaxCorners}.";
        if (new[] { callout.X, callout.Y, callout.Width ?? 0, callout.Height ?? 0 }.Concat(callout.Corners).Any(place => place is not (>= 0 and <= 1)))
            return "Places are fractions of the picture, 0 to 1.";
        return new object?[] { callout.ComponentId, callout.BoardId, callout.PortId }.Count(target => target is not null) > 1 ? "A callout points at one thing: a component, a board or a port." : null;
    }

    private static bool IsWritable(Working working)
    {
        try
        {
            return JsonSerializer.SerializeToUtf8Bytes(working, ArchiveJson.Options).Length > 0;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static string? Refuse(ArchiveLine.Family family)
    {
        if (family.Name.Length is 0 or > PartFamily.MaxNameLength || family.Note?.Length > PartFamily.MaxNoteLength)
            return $"“name” has 1 to {PartFamily.MaxNameLength} characters, “note” at most {PartFamily.MaxNoteLength}.";
        if (family.Aliases.Select(alias => alias?.MatchKey).Prepend(family.MatchKey).FirstOrDefault(key => PartNumber.From(key)?.MatchKey != key) is { } wrong)
            return $"“{wrong}” is no match key: the base number in capitals, with nothing of how the part was packed or finished.";
        if (family.Aliases.Any(alias => alias.Kind is FamilyNameKind.BaseNumber))
            return "An alias is an ordering variant or another number.";
        if (family.TopMarks.Any(code => code?.Text.Length is null or 0 or > TopMark.MaxCodeLength))
            return $"A top mark has 1 to {TopMark.MaxCodeLength} characters.";
        // It becomes a link.
        if (family.DatasheetUrl is { } url && !(Uri.TryCreate(url, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"))
            return "“datasheet_url” begins with http:// or https://.";
        if (family.Relations.Any(relation => relation is null || string.CompareOrdinal(family.MatchKey, relation.Other) >= 0))
            return "A relation stands with the family whose match key comes first.";
        return family.Ratings.Select(rating => InOrder(rating.Low, rating.Nominal, rating.High) ?? rating.Kind.Refuse(Interval.Create(rating.Low, rating.Nominal, rating.High))).FirstOrDefault(reason => reason is not null) ?? Slugged(family.Slug);
    }

    private static string? Refuse(ArchiveLine.PhotoFile file)
    {
        if (file.Sha256.Length != 64 || !file.Sha256.All(char.IsAsciiHexDigitLower))
            return "“sha256” has 64 lower-case hexadecimal digits.";
        if (file.Format is not ("jpeg" or "png" or "webp"))
            return "“format” is jpeg, png or webp.";
        if (file.Bytes < 1 || file.WidthPixels < 1 || file.HeightPixels < 1)
            return "“bytes”, “width_pixels” and “height_pixels” are 1 or more.";
        return file.Entry is not null && file.Entry != ArchiveForm.PhotoEntry(file.Sha256, file.Format) ? $"“entry” is {ArchiveForm.PhotoEntry(file.Sha256, file.Format)}, or null." : null;
    }

    private static string? Slugged(string slug) =>
        slug.Length is 0 or > Slug.MaxLength || !slug.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') ? $"“slug” has 1 to {Slug.MaxLength} characters a to z, 0 to 9 and hyphens." : null;

    private static string? InOrder(double? low, double? nominal, double? high) =>
        (low, nominal, high) switch
        {
            (null, null, null) => null,
            ({ } least, { } middle, { } most) when Interval.TryCreate(least, middle, most) is not null => null,
            _ => "Low, nominal and high are finite numbers in that order, or all null.",
        };
}
