using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>
/// Where a list goes on: the place of the last part seen, and what the list was, so that pages of two lists are
/// never taken for one.
/// </summary>
/// <param name="List">A hash of whatever decides which parts are listed, in which order, at which prices.</param>
/// <param name="Revision">The catalog that was listed.</param>
/// <param name="Number">The place: its number in the order, where it has one.</param>
/// <param name="Word">The place: its word in the order, where it has one.</param>
/// <param name="Id">The place: its id.</param>
internal sealed record PartCursor(string List, string Revision, double? Number, string? Word, string Id)
{
    /// <summary>Longest cursor that is read; what is given out stays below it.</summary>
    public const int MaxLength = 2_048;

    // Enough that a list is not mistaken for another, and that a cursor which was cut or changed is noticed.
    private const int HashBytes = 12;

    /// <summary>The opaque text of the place after which the next page starts.</summary>
    public static string Write(PartQuery query, Outlet? outlet, string revision, PartPlace next)
    {
        PartCursor cursor = new(HashOf(query, outlet), revision, next.Number, next.Word, next.Id);
        byte[] json = WireJson.Bytes(cursor);
        return Base64Url.EncodeToString([.. json, .. Hash(json)]);
    }

    /// <summary>The place; null with a fault where the cursor is none, or belongs to another list.</summary>
    public static PartPlace? Read(
        string text, string parameter, PartQuery query, Outlet? outlet, string revision, FaultList faults)
    {
        if (Decode(text) is not { } cursor)
        {
            faults.Add(
                ErrorCodes.CursorInvalid, parameter, text,
                "nextCursor of the page before, letter by letter, or no cursor");
            return null;
        }

        if (cursor.List != HashOf(query, outlet))
        {
            faults.Add(
                ErrorCodes.CursorMismatch, parameter, text,
                "the filters, the order and the outlet of the page before; leave the cursor out to start again");
            return null;
        }

        if (cursor.Revision != revision)
        {
            faults.Add(
                ErrorCodes.CursorMismatch, parameter, text,
                "no cursor: the catalog has changed since the page before, so start again at the first page");
            return null;
        }

        return new PartPlace(cursor.Number, cursor.Word, cursor.Id);
    }

    private static PartCursor? Decode(string text)
    {
        if (!Base64Url.IsValid(text))
            return null;
        ReadOnlySpan<byte> bytes = Base64Url.DecodeFromChars(text);
        if (bytes.Length <= HashBytes || !bytes[^HashBytes..].SequenceEqual(Hash(bytes[..^HashBytes])))
            return null;
        try
        {
            return JsonSerializer.Deserialize<PartCursor>(bytes[..^HashBytes], WireJson.Options);
        }
        catch (JsonException)
        {
            // The hash is no secret: anyone can make one for any bytes.
            return null;
        }
    }

    private static string HashOf(PartQuery query, Outlet? outlet) => TextHash(WireJson.Bytes(new
    {
        query.Kind,
        Ranges = query.Ranges.OrderBy(range => range.Field, StringComparer.Ordinal),
        Words = query.Words.OrderBy(words => words.Field, StringComparer.Ordinal)
            .Select(words => (object[])[words.Field, words.Words.Distinct().Order(StringComparer.Ordinal)]),
        FitsMachine = query.FitsMachine?.Machine.Id,
        InStock = query.InStockAt is not null,
        Outlet = outlet?.Id,
        query.Text,
        query.SortField,
        query.Descending,
    }));

    private static string TextHash(byte[] bytes) => Base64Url.EncodeToString(Hash(bytes));

    private static ReadOnlySpan<byte> Hash(ReadOnlySpan<byte> bytes) =>
        SHA256.HashData(bytes).AsSpan(0, HashBytes);
}
