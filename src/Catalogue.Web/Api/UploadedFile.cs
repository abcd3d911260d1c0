using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace Catalogue.Web.Api;

/// <summary>The one file of a multipart request, as a stream that is read while it arrives.</summary>
/// <param name="Stream">The file's bytes, or null when there is a problem.</param>
/// <param name="FileName">Its name as it came, cut to 255 characters; for people only.</param>
/// <param name="Problem">Why there is no file, or null.</param>
/// <param name="Fields">The texts in front of the file that were asked for, by name.</param>
internal sealed record UploadedFile(Stream? Stream, string? FileName, IResult? Problem, IReadOnlyDictionary<string, string> Fields)
{
    /// <summary>Longest text of a field, in bytes.</summary>
    public const int MaxFieldBytes = 1024 * 1024;

    public static Task<UploadedFile> OpenAsync(HttpRequest request, CancellationToken cancellationToken) => OpenAsync(request, [], cancellationToken);

    /// <summary>Reads up to the file.</summary>
    /// <param name="request">The request.</param>
    /// <param name="names">Fields that are read on the way; all others are passed over.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    public static async Task<UploadedFile> OpenAsync(HttpRequest request, IEnumerable<string> names, CancellationToken cancellationToken)
    {
        var wanted = names.ToHashSet(StringComparer.Ordinal);
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type) || !string.Equals(type.MediaType.Value, "multipart/form-data", StringComparison.OrdinalIgnoreCase))
            return Refuse(StatusCodes.Status415UnsupportedMediaType, "A file comes as multipart/form-data with one field named file.");
        var boundary = HeaderUtilities.RemoveQuotes(type.Boundary).Value;
        if (string.IsNullOrEmpty(boundary) || boundary.Length > 200)
            return Refuse(StatusCodes.Status400BadRequest, "The multipart body names no boundary.");
        try
        {
            var reader = new MultipartReader(boundary, request.Body) { HeadersLengthLimit = 8192, HeadersCountLimit = 16 };
            for (var sections = 0; sections < 8 && await reader.ReadNextSectionAsync(cancellationToken) is { } section; sections++)
            {
                if (!ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var disposition))
                    continue;
                var field = HeaderUtilities.RemoveQuotes(disposition.Name).Value ?? "";
                if (disposition.IsFileDisposition() && field == "file")
                {
                    var name = HeaderUtilities.RemoveQuotes(disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName).Value;
                    return new UploadedFile(new ArrivingStream(section.Body), Clean(name), null, fields);
                }

                if (!wanted.Remove(field))
                    continue;
                if (await ReadAsync(section.Body, cancellationToken) is not { } text)
                    return Refuse(StatusCodes.Status413PayloadTooLarge, $"The field {field} is longer than {MaxFieldBytes / 1024} KiB or no UTF-8.");
                fields[field] = text;
            }
        }
        catch (IOException)
        {
            return Refuse(StatusCodes.Status400BadRequest, "The multipart body broke off before its end.");
        }

        return Refuse(StatusCodes.Status400BadRequest, "There is no field named file with a file in it.");
    }

    private static async Task<string?> ReadAsync(Stream body, CancellationToken cancellationToken)
    {
        var bytes = new byte[MaxFieldBytes + 1];
        var length = await body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancellationToken);
        return length <= MaxFieldBytes && System.Text.Unicode.Utf8.IsValid(bytes.AsSpan(0, length)) ? System.Text.Encoding.UTF8.GetString(bytes, 0, length) : null;
    }

    private static string? Clean(string? name) => Domain.Text.PlainText.Clean(name) is { } clean ? Domain.Text.PlainText.Clean(clean[..Math.Min(clean.Length, 255)]) : null;

    private static UploadedFile Refuse(int status, string detail) => new(null, null, ApiProblem.Of(status, detail, "file"), new Dictionary<string, string>());
}
