using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace PartPicker.Benchmarks;

/// <summary>
/// Callers that each send the next request when the answer is there, over a connection that they keep; by plain sockets, so
/// that the client takes little of the machine that it shares with the service.
/// </summary>
internal sealed class ClosedLoop(Uri address, int callers)
{
    private const int BufferBytes = 256 * 1024;

    /// <summary>Asks for that long.</summary>
    /// <param name="time">How long.</param>
    /// <param name="request">The next request, whole.</param>
    /// <param name="status">The status that every answer must have.</param>
    public async Task<LoopFigures> RunAsync(TimeSpan time, Func<byte[]> request, int status)
    {
        long started = Stopwatch.GetTimestamp();
        List<double>[] latencies = await Task.WhenAll(
            Enumerable.Range(0, callers).Select(_ => Task.Run(() => CallAsync(started, time, request, status))));
        double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        double[] sorted = [.. latencies.SelectMany(list => list).Order()];
        return new LoopFigures(sorted.Length / seconds, At(0.5), At(0.99));

        double At(double share) => sorted[(int)(share * (sorted.Length - 1))];
    }

    /// <summary>A request as its bytes.</summary>
    public static byte[] Request(string methodAndPath, string? json = null, string? tag = null) => Encoding.UTF8.GetBytes(
        $"{methodAndPath} HTTP/1.1\r\nHost: localhost\r\n"
        + (tag is null ? "" : $"If-None-Match: {tag}\r\n")
        + (json is null ? "\r\n" : $"Content-Type: application/json\r\nContent-Length: {Encoding.UTF8.GetByteCount(json)}\r\n\r\n{json}"));

    private async Task<List<double>> CallAsync(long started, TimeSpan time, Func<byte[]> request, int status)
    {
        using TcpClient caller = new(address.Host, address.Port) { NoDelay = true };
        NetworkStream stream = caller.GetStream();
        byte[] buffer = new byte[BufferBytes];
        List<double> latencies = [];
        while (Stopwatch.GetElapsedTime(started) < time)
        {
            byte[] bytes = request();
            long sent = Stopwatch.GetTimestamp();
            await stream.WriteAsync(bytes);
            await ReadAnswerAsync(stream, buffer, status);
            latencies.Add(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
        }

        return latencies;
    }

    private static async Task ReadAnswerAsync(NetworkStream stream, byte[] buffer, int status)
    {
        int read = 0;
        int end;
        while ((end = buffer.AsSpan(0, read).IndexOf("\r\n\r\n"u8)) < 0)
            read += await ReadAsync(buffer.AsMemory(read));
        string head = Encoding.ASCII.GetString(buffer, 0, end + 2);
        if (!head.StartsWith($"HTTP/1.1 {status} ", StringComparison.Ordinal))
            throw new InvalidOperationException($"Not {status}: {Encoding.UTF8.GetString(buffer, 0, read)}");
        const string Length = "\r\nContent-Length: ";
        int at = head.IndexOf(Length, StringComparison.OrdinalIgnoreCase);
        int body = at < 0 ? 0 : int.Parse(head.AsSpan(at + Length.Length, head.IndexOf('\r', at + 2) - at - Length.Length), CultureInfo.InvariantCulture);
        for (int left = end + 4 + body - read; left > 0;)
            left -= await ReadAsync(buffer);

        async Task<int> ReadAsync(Memory<byte> to) => await stream.ReadAsync(to) is > 0 and var count
            ? count
            : throw new InvalidOperationException("The service hung up.");
    }
}

/// <summary>What callers in a closed loop saw.</summary>
internal sealed record LoopFigures(double RequestsPerSecond, double MedianMs, double P99Ms);
