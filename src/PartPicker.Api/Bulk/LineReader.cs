using System.Buffers;
using System.IO.Pipelines;

namespace PartPicker.Api.Bulk;

/// <summary>A line as sent, without its end.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Bytes">Null for a line that is longer than is read, or that is passed over.</param>
internal readonly record struct SentLine(long Number, byte[]? Bytes)
{
    /// <summary>True for a line that holds nothing but white space.</summary>
    public bool IsBlank => Bytes is { } bytes && bytes.AsSpan().Trim(" \t\r"u8).IsEmpty;
}

/// <summary>Takes lines out of a body as it arrives; no more of it is held than one line.</summary>
internal sealed class LineReader(PipeReader body, int maxBytes)
{
    /// <summary>How many lines were taken.</summary>
    public long Count { get; private set; }

    /// <summary>Takes whatever comes to its end, and keeps nothing.</summary>
    public async Task DropRestAsync(CancellationToken stop)
    {
        while (await NextAsync(passOver: true, stop) is not null)
        {
        }
    }

    /// <summary>The next line; null at the end.</summary>
    /// <param name="passOver">True: the line counts, but its bytes are not kept.</param>
    public async ValueTask<SentLine?> NextAsync(bool passOver, CancellationToken stop)
    {
        bool drop = passOver;
        bool begun = false;
        while (true)
        {
            ReadResult read = await body.ReadAsync(stop);
            ReadOnlySequence<byte> buffer = read.Buffer;
            if (buffer.PositionOf((byte)'\n') is { } end)
            {
                ReadOnlySequence<byte> line = buffer.Slice(0, end);
                byte[]? bytes = drop || line.Length > maxBytes ? null : line.ToArray();
                body.AdvanceTo(buffer.GetPosition(1, end));
                return new SentLine(++Count, bytes);
            }

            begun |= !buffer.IsEmpty;
            if (read.IsCompleted)
            {
                byte[]? rest = drop || buffer.Length > maxBytes ? null : buffer.ToArray();
                body.AdvanceTo(buffer.End);
                return begun ? new SentLine(++Count, rest) : null;
            }

            drop |= buffer.Length > maxBytes;
            body.AdvanceTo(drop ? buffer.End : buffer.Start, buffer.End);
        }
    }
}
