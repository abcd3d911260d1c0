using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace Catalogue.Web.Api;

/// <summary>The one file of a multipart request, as a stream that is read while it arrives.</summary>
/// <param name="Stream">The file's bytes, or null when there is a problem.</param>
/// <param name="FileName">Its name as it came, cut to 255 characters; for people only.</param>
/// <param name="Problem">Why there is no file, or null.</param>
internal sealed record UploadedFile(Stream? Stream, string? FileName, IResult? Problem)
{
    public static async Task<UploadedFile> OpenAsync(HttpRequest request, CancellationToken cancellationToken)
    {
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
                if (ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var disposition) && disposition.IsFileDisposition()
                    && HeaderUtilities.RemoveQuotes(disposition.Name) == "file")
                {
                    var name = HeaderUtilities.RemoveQuotes(disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName).Value;
                    return new UploadedFile(new ArrivingStream(section.Body), Clean(name), null);
                }
            }
        }
        catch (IOException)
        {
            return Refuse(StatusCodes.Status400BadRequest, "The multipart body broke off before its end.");
        }

        return Refuse(StatusCodes.Status400BadRequest, "There is no field named file with a file in it.");
    }

    private static string? Clean(string? name) => Domain.Text.PlainText.Clean(name) is { } clean ? Domain.Text.PlainText.Clean(clean[..Math.Min(clean.Length, 255)]) : null;

    private static UploadedFile Refuse(int status, string detail) => new(null, null, ApiProblem.Of(status, detail, "file"));
}
