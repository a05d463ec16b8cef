using System.Buffers;
using System.Text.Json;
using PartPicker.Api.Bulk;

namespace PartPicker.Api.Wire;

/// <summary>Writes the lines of a bulk run, each with its end.</summary>
/// <remarks>
/// A result is put in as the bytes that the address for one sends. What does not apply to a line is left out, since a
/// run has many of them.
/// </remarks>
internal static class BulkLineWriter
{
    // Room for what stands around a result.
    private const int FrameBytes = 256;

    private static readonly JsonWriterOptions Options = new() { Encoder = WireJson.Options.Encoder };

    /// <summary>The answer to one thing that was asked.</summary>
    public static ReadOnlyMemory<byte> Line(BulkItem item, BulkReply reply)
    {
        var bytes = new ArrayBufferWriter<byte>((reply.Result?.Length ?? 0) + FrameBytes);
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("line", item.Line);
            json.WritePropertyName("id");
            if (item.Id is { } id)
                id.WriteTo(json);
            else
                json.WriteNullValue();
            if (item.Point is { } point)
            {
                json.WriteNumber("point", point.Number);
                json.WriteNumber("points", point.Of);
                json.WritePropertyName("axes");
                point.Axes.WriteTo(json, WireJson.Options);
            }

            json.WriteNumber("status", reply.Status);
            json.WritePropertyName(reply.Result is null ? "problem" : "result");
            if (reply.Result is { } result)
                json.WriteRawValue(result, skipInputValidation: true);
            else
                JsonSerializer.Serialize(json, reply.Problem, WireJson.Options);
            json.WriteEndObject();
        }

        return Ended(bytes);
    }

    /// <summary>The last line.</summary>
    public static ReadOnlyMemory<byte> End(int count, int failed, long? lastLine, ProblemWire? problem)
    {
        var bytes = new ArrayBufferWriter<byte>(FrameBytes);
        bytes.Write(WireJson.Bytes(new BulkEndWire
        {
            Done = true, Count = count, Failed = failed, LastLine = lastLine, Problem = problem,
        }));
        return Ended(bytes);
    }

    private static ReadOnlyMemory<byte> Ended(ArrayBufferWriter<byte> bytes)
    {
        bytes.Write("\n"u8);
        return bytes.WrittenMemory;
    }
}
