using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>
/// Where a list goes on: the place after which, bound to the question and the catalog revision, so that another
/// question or another catalog cannot make it skip or repeat a part in silence.
/// </summary>
internal static class PartCursor
{
    public static string Write(PartPlace place, PartQuery query, Outlet? outlet, string revision) =>
        Base64Url.EncodeToString(WireJson.Bytes(new CursorWire
        {
            Number = place.Number, Word = place.Word, Id = place.Id, Question = Hash(query, outlet), Revision = revision,
        }));

    /// <summary>The place; null, with a fault, for what is no cursor or belongs elsewhere.</summary>
    public static PartPlace? Read(string cursor, PartQuery query, Outlet? outlet, string revision, FaultList faults)
    {
        if (Decode(cursor) is not { } read)
        {
            faults.AddParameter(ErrorCodes.CursorInvalid, "cursor", cursor, "the nextCursor of the page before, unchanged");
            return null;
        }

        if (read.Revision != revision)
        {
            faults.AddParameter(
                ErrorCodes.CursorMismatch, "cursor", cursor,
                $"a cursor of catalog revision {revision}; this one is of {read.Revision}. The catalog has changed: start again without a cursor");
            return null;
        }

        if (read.Question != Hash(query, outlet))
        {
            faults.AddParameter(
                ErrorCodes.CursorMismatch, "cursor", cursor, "the filters and the order that the cursor was given out for");
            return null;
        }

        return new PartPlace(read.Number, read.Word, read.Id);
    }

    private static CursorWire? Decode(string cursor)
    {
        try
        {
            return JsonSerializer.Deserialize<CursorWire>(Base64Url.DecodeFromChars(cursor), WireJson.Options);
        }
        catch (Exception fault) when (fault is FormatException or JsonException)
        {
            return null;
        }
    }

    // The length of a page may change on the way; everything that chooses or orders parts may not.
    private static string Hash(PartQuery query, Outlet? outlet)
    {
        StringBuilder text = new();
        text.Append(query.Kind).Append('|').Append(query.FitsMachine?.Machine.Id).Append('|').Append(outlet?.Id).Append('|')
            .Append(query.InStockAt is not null).Append('|').Append(query.SortField).Append('|').Append(query.Descending)
            .Append('|').Append(query.Text);
        foreach (FieldRange range in query.Ranges.OrderBy(r => r.Field, StringComparer.Ordinal))
            text.Append(FormattableString.Invariant($"|{range.Field}:{range.Min:R}:{range.Max:R}"));
        foreach (FieldWords words in query.Words.OrderBy(w => w.Field, StringComparer.Ordinal))
            text.Append('|').Append(words.Field).Append('=').AppendJoin(',', words.Words.Order(StringComparer.Ordinal));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>What a cursor holds.</summary>
    internal sealed record CursorWire
    {
        public double? Number { get; init; }
        public string? Word { get; init; }
        public required string Id { get; init; }
        public required string Question { get; init; }
        public required string Revision { get; init; }
    }
}
