using System.IO.Pipelines;
using System.Text;
using PartPicker.Api.Bulk;
using Xunit;

namespace PartPicker.Service.Tests.Bulk;

public sealed class LineReaderTests
{
    private const int MaxBytes = 5;

    [Theory]
    [InlineData("", "")]
    [InlineData("a", "1 a")]
    [InlineData("a\n", "1 a")]
    [InlineData("a\n\n", "1 a|2 ")]
    [InlineData("\n\nab\r\nc", "1 |2 |3 ab\r|4 c")]
    [InlineData("abcde\nabcdef\na", "1 abcde|2 null|3 a")]
    [InlineData("a\nabcdefabcdefabcdef", "1 a|2 null")]
    [InlineData("abcdefabcdefabcdef\nb\n", "1 null|2 b")]
    public async Task Lines_are_the_same_however_the_body_comes_in_pieces(string body, string lines)
    {
        for (int piece = 1; piece <= body.Length + 1; piece++)
            Assert.Equal(lines, string.Join('|', await Read(body, piece, passOver: 0)));
    }

    [Fact]
    public async Task Lines_that_are_passed_over_count()
    {
        for (int piece = 1; piece < 30; piece++)
            Assert.Equal(["1 null", "2 null", "3 c", "4 d"], await Read("a\nbbbbbbbbbb\nc\nd", piece, passOver: 2));
    }

    private static async Task<List<string>> Read(string body, int piece, int passOver)
    {
        Pipe pipe = new();
        LineReader reader = new(pipe.Reader, MaxBytes);
        Task sending = Task.Run(async () =>
        {
            foreach (byte[] bytes in Encoding.UTF8.GetBytes(body).Chunk(piece))
            {
                await pipe.Writer.WriteAsync(bytes);
                await Task.Yield();
            }

            await pipe.Writer.CompleteAsync();
        });
        List<string> lines = [];
        while (await reader.NextAsync(lines.Count < passOver, default) is { } line)
            lines.Add($"{line.Number} {(line.Bytes is { } bytes ? Encoding.UTF8.GetString(bytes) : "null")}");
        await sending;
        return lines;
    }
}
