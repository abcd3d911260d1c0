using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Bench logs, read while they are uploaded.</summary>
/// <param name="site">The site.</param>
public sealed class DecodeLogTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Path = "/api/v1/decode/log";

    [Fact]
    public async Task Log_OfAnybody_IsReadWithColumnsAndSums()
    {
        var log = await UploadAsync(site.Anonymous, Path, "time_s,USET[V],voltage_mV,current_A,note\n0,5,5000,1,a\n1800,5,5000,1,\n3600,5,5000,1,b\n");

        Assert.Equal((5.0, 1.0, 3600.0, 5.0, 5.0), (Number(log, "energy_wh"), Number(log, "charge_ah"), Number(log, "duration_s"), Number(log, "peak_w"), Number(log, "mean_voltage_v")));
        Assert.Equal((5.0, 5.0, 1.0, 1.0, 3), (Number(log, "min_voltage_v"), Number(log, "max_voltage_v"), Number(log, "min_current_a"), Number(log, "max_current_a"), log.GetProperty("samples").GetInt32()));
        Assert.Equal(("UTF-8", ","), (log.Text("encoding"), log.Text("delimiter")));
        Assert.Equal(["time", "set_value", "voltage", "current", "text"], log.Items("columns").Select(column => column.Text("role")));
        var voltage = log.Items("columns").ElementAt(2);
        Assert.Equal(("voltage_mV", "mV", "name"), (voltage.Text("name"), voltage.Text("unit"), voltage.Text("source")));
        Assert.Equal(JsonValueKind.Null, log.GetProperty("efficiency").ValueKind);
        Assert.Contains("USET[V]", Assert.Single(log.Items("warnings")).GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Log_WithoutCurrent_HasNullsAndAWarning()
    {
        var log = await UploadAsync(site.Anonymous, Path, "time_s,voltage_v\n0,5\n1,5\n");

        Assert.All(["energy_wh", "charge_ah", "peak_w", "max_current_a"], field => Assert.Equal(JsonValueKind.Null, log.GetProperty(field).ValueKind));
        Assert.Contains("No current", Assert.Single(log.Items("warnings")).GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Log_WithQuestions_IsAnsweredByTheQuery()
    {
        const string Text = "time,ch1,ch2\n23:59:50,5,1000\n00:00:00,5,1000\n";
        var mapping = Uri.EscapeDataString("[{\"column\":\"ch1\",\"role\":\"voltage\",\"unit\":\"V\"},{\"column\":\"ch2\",\"role\":\"current\",\"unit\":\"mA\"}]");

        var asked = await UploadAsync(site.Anonymous, Path, Text);
        var answered = await UploadAsync(site.Anonymous, $"{Path}?step_back=next_day&mapping={mapping}", Text);

        Assert.NotEmpty(asked.Items("questions"));
        Assert.Equal(JsonValueKind.Null, asked.GetProperty("duration_s").ValueKind);
        Assert.Equal((10.0, 50 / 3600.0), (Number(answered, "duration_s"), Number(answered, "energy_wh")));
        Assert.Empty(answered.Items("questions"));
    }

    [Theory]
    [InlineData("", HttpStatusCode.UnprocessableEntity, "empty")]
    [InlineData("nothing here\nbut words\n", HttpStatusCode.UnprocessableEntity, "no line of numbers")]
    [InlineData("PK\u0003\u0004....", HttpStatusCode.UnprocessableEntity, "zip")]
    public async Task Content_ThatIsNoLog_IsRefusedWithTheReason(string text, HttpStatusCode status, string reason)
    {
        var problem = await site.Anonymous.UploadAsync(Path, Encoding.UTF8.GetBytes(text), "log.csv", status);

        Assert.Contains(reason, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?step_back=sort", "step_back")]
    [InlineData("?mapping=x", "mapping")]
    [InlineData("?mapping=[null]", "mapping")]
    [InlineData("?mapping=[{\"column\":\"a\",\"role\":\"volts\"}]", "role is one of")]
    [InlineData("?mapping=[{\"column\":\"a\",\"role\":\"voltage\",\"unit\":\"furlong\"}]", "furlong")]
    public async Task Query_ThatMeansNothing_IsABadRequest(string query, string words)
    {
        var problem = await site.Anonymous.UploadAsync(Path + query, "time_s,a\n0,1\n"u8.ToArray(), "log.csv", HttpStatusCode.BadRequest);

        Assert.Contains(words, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Upload_ThatBreaksOff_IsTheSendersFault()
    {
        using var cut = new ByteArrayContent([.. "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\n"u8, .. "time_s,V,A\n0,1,1\n1,1,1\n"u8]);
        cut.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=b");

        using var response = await site.Anonymous.PostAsync(Path, cut);

        var problem = await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
        Assert.Contains("broke off", problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Body_ThatIsNoForm_IsRefused()
    {
        using var body = new StringContent("time_s,V,A\n0,1,1\n", Encoding.UTF8, "text/csv");
        using var response = await site.Anonymous.PostAsync(Path, body);

        await Requests.ReadAsync(response, HttpStatusCode.UnsupportedMediaType);
    }

    [Fact]
    public async Task LargeLog_NeedsAToken()
    {
        var row = "0123456789,5.000,1.000,................................\n"u8.ToArray();
        var large = new byte[(17 * 1024 * 1024 / row.Length * row.Length) + row.Length];
        for (var at = 0; at < large.Length; at += row.Length)
        {
            row.CopyTo(large, at);
            (at / row.Length).TryFormat(large.AsSpan(at, 10), out var written, provider: System.Globalization.CultureInfo.InvariantCulture);
            large.AsSpan(at + written, 10 - written).Fill((byte)' ');
        }

        byte[] content = [.. "time_s,voltage_v,current_a,note\n"u8, .. large];

        var problem = await site.Anonymous.UploadAsync(Path, content, "log.csv", HttpStatusCode.RequestEntityTooLarge);
        var log = await site.Reader.UploadAsync(Path, content, "log.csv", HttpStatusCode.OK);

        Assert.Contains("16 MiB", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Equal(large.Length / row.Length, log.GetProperty("samples").GetInt32());
        Assert.Equal((large.Length / row.Length) - 1, Number(log, "duration_s"));
        Assert.InRange(log.Items("trace").Count(), 256, 512);
    }

    [Fact]
    public async Task LargeLog_ThatDoesNotSayItsLength_IsCutAtTheLimit()
    {
        using var body = new StreamContent(new Endless("--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\ntime_s,V\n"u8.ToArray(), 20 * 1024 * 1024));
        body.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=b");
        using var request = new HttpRequestMessage(HttpMethod.Post, Path) { Content = body };
        request.Headers.TransferEncodingChunked = true;

        using var response = await site.Anonymous.SendAsync(request);

        await Requests.ReadAsync(response, HttpStatusCode.RequestEntityTooLarge);
    }

    private static Task<JsonElement> UploadAsync(HttpClient client, string path, string text) => client.UploadAsync(path, Encoding.UTF8.GetBytes(text), "log.csv", HttpStatusCode.OK);

    private static double Number(JsonElement log, string field) => log.GetProperty(field).GetDouble();

    /// <summary>A body that begins with something and goes on with rows.</summary>
    private sealed class Endless(byte[] start, long length) : Stream
    {
        private long _position;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = (int)Math.Min(count, length - _position);
            for (var i = 0; i < read; i++, _position++)
                buffer[offset + i] = _position < start.Length ? start[_position] : (byte)"1,5\n"[(int)(_position % 4)];
            return read;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
