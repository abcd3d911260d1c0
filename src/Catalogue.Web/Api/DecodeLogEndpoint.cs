using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Text;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;
using JsonOptions = Microsoft.AspNetCore.Http.Json.JsonOptions;

namespace Catalogue.Web.Api;

/// <summary>Reads a bench log while it is uploaded; nothing of it is kept.</summary>
internal static class DecodeLogEndpoint
{
    /// <summary>The largest log of a caller with a token.</summary>
    public const long TokenLimit = 512L * 1024 * 1024;

    /// <summary>The largest log of anybody else.</summary>
    public const long OpenLimit = 16L * 1024 * 1024;

    // The boundaries and headers around the file.
    private const long Wrapping = 64 * 1024;
    private const int BlockBytes = 64 * 1024;
    private const int MostMappings = 100;

    /// <summary>A bench log as it was read. Whatever cannot be told is null, and a warning says why.</summary>
    /// <param name="Columns">The columns in the order of the file.</param>
    /// <param name="EnergyWh">Energy in watt-hours.</param>
    /// <param name="ChargeAh">Charge in ampere-hours.</param>
    /// <param name="DurationS">From the first sample to the last in seconds.</param>
    /// <param name="PeakW">Highest power of a sample in watt.</param>
    /// <param name="MeanVoltageV">Energy by charge in volt; without a current the mean of the samples.</param>
    /// <param name="MinVoltageV">Lowest voltage in volt.</param>
    /// <param name="MaxVoltageV">Highest voltage in volt.</param>
    /// <param name="MeanCurrentA">Mean of the samples in ampere.</param>
    /// <param name="MinCurrentA">Lowest current in ampere.</param>
    /// <param name="MaxCurrentA">Highest current in ampere.</param>
    /// <param name="MinPowerW">Lowest power in watt.</param>
    /// <param name="MaxPowerW">Highest power in watt.</param>
    /// <param name="MinResistanceOhm">Lowest resistance in ohm, of a meter that changes its function.</param>
    /// <param name="MaxResistanceOhm">Highest resistance in ohm, likewise.</param>
    /// <param name="Samples">Lines with samples, cut and unusable ones included.</param>
    /// <param name="CompleteSamples">Those with as many cells as the header.</param>
    /// <param name="UsableSamples">Those with a usable voltage and a usable current.</param>
    /// <param name="MedianStepS">Median of the steps forward in time, in seconds.</param>
    /// <param name="Start">Date and time of the first sample as written; null where no date is known.</param>
    /// <param name="WithoutGaps">Sums without pauses longer than five times the median step; null where there is none.</param>
    /// <param name="ForwardOnly">Sums of the stretches in which time runs forward; null where it never goes back.</param>
    /// <param name="Efficiency">Output energy by input energy.</param>
    /// <param name="InputWh">Energy at the input in watt-hours, over the samples that have both sides.</param>
    /// <param name="OutputWh">Energy at the output, likewise.</param>
    /// <param name="Segments">Parts of the recording that the log itself numbers or names.</param>
    /// <param name="Steps">Settled stretches, such as those of a load sweep.</param>
    /// <param name="Trace">At most 512 points for a plot, each with lowest and highest.</param>
    /// <param name="Preamble">Lines above the header, as written.</param>
    /// <param name="Encoding">IANA name of the encoding.</param>
    /// <param name="Delimiter">What separates cells; null where a line is one cell.</param>
    /// <param name="DecimalMark">What separates whole from fraction.</param>
    /// <param name="TimeBase">How times were read; null where there are none.</param>
    /// <param name="Warnings">What must be known, in words; questions among it.</param>
    /// <param name="Questions">Those warnings that wait for an answer: <c>mapping</c> or <c>step_back</c> give it.</param>
    /// <param name="Assumptions">What was taken for granted, in words.</param>
    public sealed record LogJson(
        IReadOnlyList<ColumnJson> Columns,
        double? EnergyWh,
        double? ChargeAh,
        double? DurationS,
        double? PeakW,
        double? MeanVoltageV,
        double? MinVoltageV,
        double? MaxVoltageV,
        double? MeanCurrentA,
        double? MinCurrentA,
        double? MaxCurrentA,
        double? MinPowerW,
        double? MaxPowerW,
        double? MinResistanceOhm,
        double? MaxResistanceOhm,
        long Samples,
        long CompleteSamples,
        long UsableSamples,
        double? MedianStepS,
        DateTime? Start,
        BenchLogSum? WithoutGaps,
        BenchLogSum? ForwardOnly,
        double? Efficiency,
        double? InputWh,
        double? OutputWh,
        IReadOnlyList<BenchLogSegment> Segments,
        IReadOnlyList<BenchLogStep> Steps,
        IReadOnlyList<BenchLogTracePoint> Trace,
        IReadOnlyList<string> Preamble,
        string Encoding,
        string? Delimiter,
        string DecimalMark,
        string? TimeBase,
        IReadOnlyList<string> Warnings,
        IReadOnlyList<string> Questions,
        IReadOnlyList<string> Assumptions);

    /// <summary>A column as it was understood.</summary>
    /// <param name="Name">Its header as written; empty where it has none.</param>
    /// <param name="Role">What it stands for, such as <c>voltage</c>, <c>set_value</c> or <c>text</c>.</param>
    /// <param name="Unit">The unit of its cells as written; null where it has none.</param>
    /// <param name="Source">Where the unit was found: <c>name</c>, <c>unit_row</c>, <c>cell</c>, <c>unit_column</c>, <c>assumed</c>, <c>given</c> or <c>none</c>.</param>
    /// <param name="Minimum">Lowest value in the base unit, or null.</param>
    /// <param name="Maximum">Highest value in the base unit, or null.</param>
    public sealed record ColumnJson(string Name, string Role, string? Unit, string Source, double? Minimum, double? Maximum);

    private sealed record Mapping([property: JsonRequired] string Column, [property: JsonRequired] string Role, string? Unit);

    public static void MapDecodeLog(this RouteGroupBuilder api) =>
        api.MapPost("decode/log", DecodeAsync).AllowAnonymous().WithTags("decode")
            .WithMetadata(new RequestSizeLimitAttribute(TokenLimit + Wrapping))
            .WithSummary("Reads a bench log (field file, text with separators): energy, charge, duration, peaks, steps.")
            .WithDescription(
                "The log is read while it arrives and not kept. At most 512 MiB with a bearer token, 16 MiB without. "
                + "mapping says what columns are, as a JSON array of {\"column\",\"role\",\"unit\"}; step_back says what is made of a clock that goes back: "
                + "ask, next_day (for times of day) or separate. The figures screen one measurement and certify nothing.")
            .Accepts<IFormFile>("multipart/form-data")
            .Produces<LogJson>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> DecodeAsync(
        HttpContext http, IOptions<JsonOptions> json, CancellationToken cancel, [FromQuery] string? mapping = null, [FromQuery(Name = "step_back")] string? stepBack = null)
    {
        if (Options(mapping, stepBack, json.Value.SerializerOptions, out var options) is { } refused)
            return refused;
        var limit = http.User.HasClaim(claim => claim.Type == TokenAuthentication.ScopeClaim) ? TokenLimit : OpenLimit;
        // The limit is kept here and not by the server, which would cut the connection under a caller that is still sending: the answer would be lost.
        if (http.Request.ContentLength > limit + Wrapping)
            return TooLarge(limit);
        try
        {
            var upload = await UploadedFile.OpenAsync(http.Request, cancel);
            if (upload.Problem is { } problem)
                return problem;
            return await ReadAsync(upload.Stream!, options, limit, cancel) switch
            {
                null => TooLarge(limit),
                BenchLogReading.Refused(var reason) => ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, reason, "file"),
                BenchLogReading.Read(var log) => TypedResults.Ok(Answer(log)),
                _ => throw new InvalidOperationException("Every reading is known."),
            };
        }
        catch (BadHttpRequestException exception) when (exception.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return TooLarge(limit);
        }
    }

    private static async Task<BenchLogReading?> ReadAsync(Stream file, BenchLogOptions options, long limit, CancellationToken cancel)
    {
        var reader = new BenchLogReader(options);
        var block = ArrayPool<byte>.Shared.Rent(BlockBytes);
        try
        {
            long total = 0;
            for (int read; (read = await file.ReadAsync(block, cancel)) > 0;)
            {
                if ((total += read) > limit)
                    return null;
                reader.Push(block.AsSpan(0, read));
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(block);
        }

        return reader.Complete();
    }

    private static IResult? Options(string? mapping, string? stepBack, JsonSerializerOptions json, out BenchLogOptions options)
    {
        options = new BenchLogOptions();
        var answer = stepBack is null ? BenchLogStepBack.Ask : SnakeCase.TryParse<BenchLogStepBack>(stepBack);
        if (answer is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"step_back is one of {string.Join(", ", SnakeCase.All<BenchLogStepBack>())}; it was “{stepBack}”.", "step_back");
        options = options with { StepBack = answer.Value };
        if (string.IsNullOrWhiteSpace(mapping))
            return null;
        List<Mapping?>? given;
        try
        {
            given = JsonSerializer.Deserialize<List<Mapping?>>(mapping, json);
        }
        catch (JsonException)
        {
            given = null;
        }

        if (given is null || given.Contains(null) || given.Count > MostMappings)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "mapping is a JSON array such as [{\"column\":\"U1\",\"role\":\"voltage\",\"unit\":\"mV\"}], of at most 100 columns.", "mapping");
        var columns = new List<BenchLogMapping>();
        foreach (var entry in given)
        {
            if (SnakeCase.TryParse<BenchLogRole>(entry!.Role) is not { } role)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"role is one of {string.Join(", ", SnakeCase.All<BenchLogRole>())}; it was “{entry.Role}”.", "mapping");
            var column = new BenchLogMapping(entry.Column, role, entry.Unit);
            if (!column.HasKnownUnit)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"The unit “{entry.Unit}” is not known; units are such as V, mV, A, µA, W, mAh, Wh, s, ms, degC.", "mapping");
            columns.Add(column);
        }

        options = options with { Columns = columns };
        return null;
    }

    private static IResult TooLarge(long limit) => ApiProblem.Of(
        StatusCodes.Status413PayloadTooLarge,
        $"A log has at most {limit / (1024 * 1024)} MiB" + (limit == OpenLimit ? $"; with a bearer token {TokenLimit / (1024 * 1024)} MiB." : "."),
        "file");

    private static LogJson Answer(BenchLog log) => new(
        [.. log.Columns.Select(column => new ColumnJson(column.Name, SnakeCase.Code(column.Role), column.Unit, SnakeCase.Code(column.Source), column.Minimum, column.Maximum))],
        log.EnergyWh,
        log.ChargeAh,
        log.DurationS,
        log.PeakW,
        log.MeanVoltageV,
        log.Voltage?.Minimum,
        log.Voltage?.Maximum,
        log.Current?.Mean,
        log.Current?.Minimum,
        log.Current?.Maximum,
        log.Power?.Minimum,
        log.Power?.Maximum,
        log.Resistance?.Minimum,
        log.Resistance?.Maximum,
        log.Samples,
        log.CompleteSamples,
        log.UsableSamples,
        log.MedianStepS,
        log.Start,
        log.WithoutGaps,
        log.ForwardOnly,
        log.Efficiency?.Ratio,
        log.Efficiency?.InputWh,
        log.Efficiency?.OutputWh,
        log.Segments,
        log.Steps,
        log.Trace,
        log.Preamble,
        log.Encoding,
        log.Delimiter?.ToString(),
        log.DecimalMark.ToString(),
        log.TimeBase,
        [.. log.Warnings.Select(warning => warning.Text)],
        [.. log.Warnings.Where(warning => warning.IsQuestion).Select(warning => warning.Text)],
        log.Assumptions);
}
