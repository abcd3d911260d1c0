using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;

namespace Catalogue.Web.Tests;

/// <summary>Requests as a script sends them, and answers as it reads them.</summary>
internal static class Requests
{
    /// <summary>Sends JSON and gives the answer's JSON; the status must be the one named.</summary>
    public static async Task<JsonElement> SendAsync(this HttpClient client, HttpMethod method, string path, object? body, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        using var response = await client.SendAsync(request);
        return await ReadAsync(response, expected);
    }

    public static Task<JsonElement> GetJsonAsync(this HttpClient client, string path, HttpStatusCode expected = HttpStatusCode.OK) => client.SendAsync(HttpMethod.Get, path, null, expected);

    public static Task<JsonElement> PostAsync(this HttpClient client, string path, object? body, HttpStatusCode expected = HttpStatusCode.Created) => client.SendAsync(HttpMethod.Post, path, body, expected);

    /// <summary>Sends one file in the field named file.</summary>
    public static async Task<JsonElement> UploadAsync(this HttpClient client, string path, byte[] content, string name, HttpStatusCode expected)
    {
        using var form = new MultipartFormDataContent();
        var file = new ByteArrayContent(content);
        file.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        form.Add(file, "file", name);
        using var response = await client.PostAsync(path, form);
        return await ReadAsync(response, expected);
    }

    /// <summary>The JSON of an answer; a failing one must be a problem document that says its status and what was wrong.</summary>
    public static async Task<JsonElement> ReadAsync(HttpResponseMessage response, HttpStatusCode expected)
    {
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(expected == response.StatusCode, $"{(int)response.StatusCode} instead of {(int)expected}: {text}");
        var json = JsonDocument.Parse(text).RootElement.Clone();
        if ((int)expected < 400)
            return json;
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Equal((int)expected, json.GetProperty("status").GetInt32());
        Assert.False(string.IsNullOrWhiteSpace(json.GetProperty("title").GetString()));
        Assert.True(json.GetProperty("detail").GetString()!.Length > 15, text);
        return json;
    }

    /// <summary>The answer to an import that waits for its end, and waits on where a busy machine needs longer than one request may last.</summary>
    public static async Task<JsonElement> ReadEndOfRunAsync(this HttpClient client, HttpResponseMessage response, HttpStatusCode expected)
    {
        if (response.StatusCode is not HttpStatusCode.Accepted || expected is not HttpStatusCode.OK)
            return await ReadAsync(response, expected);
        var run = await ReadAsync(response, HttpStatusCode.Accepted);
        for (var tries = 0; tries < 600 && run.Text("state") is "waiting" or "running"; tries++)
        {
            await Task.Delay(500);
            run = await client.GetJsonAsync(run.Text("url"));
        }

        return run;
    }

    public static string Text(this JsonElement element, string name) => element.GetProperty(name).GetString()!;

    public static IEnumerable<JsonElement> Items(this JsonElement element, string name) => element.GetProperty(name).EnumerateArray();
}
