using System.Buffers;
using System.Text.Json;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Wire;

/// <summary>Reads a body as sent into JSON, or says why it is none.</summary>
internal static class RequestBody
{
    // Only so that the check below, and not the reader of JSON, meets what is nested too deep.
    private const int ReaderDepth = 512;

    /// <summary>What is said of a body that breaks off or breaks HTTP.</summary>
    public const string NotWhole = "The body ended before it was whole, or does not keep the form of HTTP (RFC 9112).";

    /// <summary>What is said of a body beyond the limit.</summary>
    public static readonly string TooLarge = $"At most {RequestLimits.MaxBodyBytes} bytes are read.";

    public static async Task<(JsonDocument? Json, ProblemAnswer? Refusal)> ReadAsync(HttpRequest request)
    {
        if (WhyNotJson(request) is { } why)
            return Refused(ErrorCodes.JsonNeeded, why);
        try
        {
            return await ReadBytesAsync(request) is { } bytes ? Parse(bytes) : Refused(ErrorCodes.BodyTooLarge, TooLarge);
        }
        catch (IOException fault) when (fault is not BadHttpRequestException)
        {
            // The server says so of a chunk whose size it cannot count.
            return Refused(ErrorCodes.BadHttp, NotWhole);
        }
    }

    /// <summary>The JSON of a body, or what is wrong with it.</summary>
    /// <param name="bytes">The body, or one line of it.</param>
    /// <param name="firstLine">Which line of the body the bytes begin with.</param>
    public static (JsonDocument? Json, ProblemAnswer? Refusal) Parse(ReadOnlyMemory<byte> bytes, long firstLine = 1)
    {
        ReadOnlyMemory<byte> json = WithoutByteOrderMark(bytes);
        if (json.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            return Refused(
                ErrorCodes.MalformedJson,
                "The body is empty. Send one JSON object, as in { \"machine\": \"…\" }; /docs/api/ shows whole examples.");
        }

        return Check(json.Span, firstLine) is { } refusal
            ? (null, refusal)
            : (JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = RequestLimits.MaxDepth }), null);
    }

    private static (JsonDocument? Json, ProblemAnswer? Refusal) Refused(ErrorCode code, string detail) =>
        (null, Problems.Of(code, detail));

    /// <summary>
    /// What the headers say that the body is, where that is not JSON of this media type, plain and in UTF-8; null where
    /// it is.
    /// </summary>
    public static string? WhyNotJson(HttpRequest request, string mediaType = WireJson.MediaType)
    {
        bool isJson = MediaTypeHeaderValue.TryParse(request.ContentType, out MediaTypeHeaderValue? type)
            && type.MediaType.Equals(mediaType, StringComparison.OrdinalIgnoreCase)
            && (!type.Charset.HasValue || IsUtf8(type.Charset));
        StringValues encoding = request.Headers.ContentEncoding;
        string? sent = (isJson, string.IsNullOrEmpty(request.ContentType)) switch
        {
            (false, true) => "No Content-Type was sent",
            (false, false) => $"Content-Type was sent as {FaultList.Shortened(request.ContentType)}",
            _ when encoding.Count == 0 || encoding == "identity" => null,
            _ => $"Content-Encoding was sent as {FaultList.Shortened(encoding.ToString())}",
        };
        return sent is null ? null : $"{sent}. Send Content-Type: {mediaType}, in UTF-8 and uncompressed.";
    }

    private static bool IsUtf8(StringSegment charset) =>
        HeaderUtilities.RemoveQuotes(charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase);

    private static async Task<byte[]?> ReadBytesAsync(HttpRequest request)
    {
        if (request.ContentLength > RequestLimits.MaxBodyBytes)
            return null;
        const int most = RequestLimits.MaxBodyBytes + 1; // One more tells that there is more.
        byte[] buffer = ArrayPool<byte>.Shared.Rent(most);
        try
        {
            int length = await request.Body.ReadAtLeastAsync(
                buffer.AsMemory(0, most), most, throwOnEndOfStream: false, request.HttpContext.RequestAborted);
            return length > RequestLimits.MaxBodyBytes ? null : buffer[..length];
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static ReadOnlyMemory<byte> WithoutByteOrderMark(ReadOnlyMemory<byte> bytes) =>
        bytes.Span.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;

    // Every text is decoded once here, so that whatever reads the document later can rely on it.
    private static ProblemAnswer? Check(ReadOnlySpan<byte> json, long firstLine)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = ReaderDepth });
        try
        {
            while (reader.Read())
            {
                if (reader.CurrentDepth >= RequestLimits.MaxDepth)
                    return Problems.Of(ErrorCodes.TooDeep, $"At most {RequestLimits.MaxDepth} levels are read.");
                if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName)
                    _ = reader.GetString();
            }

            return null;
        }
        catch (JsonException fault)
        {
            return Malformed(firstLine + (fault.LineNumber ?? 0), fault.BytePositionInLine ?? 0);
        }
        catch (InvalidOperationException)
        {
            ReadOnlySpan<byte> before = json[..(int)reader.TokenStartIndex];
            return Malformed(firstLine + before.Count((byte)'\n'), before.Length - (before.LastIndexOf((byte)'\n') + 1));
        }
    }

    private static ProblemAnswer Malformed(long line, long positionInLine) => Problems.Of(
        ErrorCodes.MalformedJson,
        $"The body is not JSON in UTF-8: see line {line}, byte {positionInLine + 1}.");
}
