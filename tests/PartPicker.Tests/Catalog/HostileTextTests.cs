using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using PartPicker.Catalog;
using Xunit;

namespace PartPicker.Tests.Catalog;

/// <summary>Whatever the files hold, the import answers with contents or with findings, and never throws.</summary>
public sealed class HostileTextTests
{
    private static readonly string[] Codes = [.. typeof(FindingCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => (string)f.GetRawConstantValue()!)];

    private static readonly string[] CsvFiles =
    [
        TestCatalog.DriveSprings, TestCatalog.Flyweights, TestCatalog.DrivenSprings, TestCatalog.Helices,
        TestCatalog.Outlet,
    ];

    /// <summary>Text of any kind, and text of the pieces that readers treat specially.</summary>
    private static readonly Gen<string> AnyText = Gen.OneOf(
        Gen.String[0, 40],
        Pick(
                "\"", "\"\"", ",", ";", ":", "\n", "\r", "\0", "\t", " ", "[", "]", "{", "}", "\\", "\\u", "d800",
                "/", "~", "0", "-0", "1", ".", "e", "e999", "NaN", "∞", "mm", " mm", "in", "N", "N/mm", "°",
                "\uFEFF", "é", "\U0001F600",
                "null", "true", "value", "origin", "40 mm: 900 N", "ds-rate")
            .Array[0, 8].Select(string.Concat));

    [Fact]
    public void Any_text_in_any_cell_is_answered() =>
        Gen.Select(Pick(CsvFiles), Gen.Int[0, 4], Gen.Int[0, 18], AnyText, Gen.Bool).Sample(
            (file, line, column, text, quoted) =>
            {
                var catalog = new TestCatalog();
                string[] lines = catalog.Text(file).Split('\n');
                string[] cells = lines[line % lines.Length].Split(',');
                cells[column % cells.Length] = quoted ? $"\"{text.Replace("\"", "\"\"")}\"" : text;
                lines[line % lines.Length] = string.Join(',', cells);
                AssertAnswered(catalog.Set(file, string.Join('\n', lines)));
            },
            iter: 300);

    [Fact]
    public void Any_text_anywhere_in_any_file_is_answered() =>
        Gen.Select(Pick([.. CsvFiles, TestCatalog.Machine]), Gen.Int[0, 3_000], Gen.Int[0, 30], AnyText).Sample(
            (file, start, length, text) =>
            {
                var catalog = new TestCatalog();
                string whole = catalog.Text(file);
                start %= whole.Length;
                length = Math.Min(length, whole.Length - start);
                AssertAnswered(catalog.Set(file, whole.Remove(start, length).Insert(start, text)));
            },
            iter: 300);

    [Fact]
    public void Any_text_in_place_of_any_value_of_a_machine_file_is_answered() =>
        Gen.Select(Gen.Int[0, 200], AnyText, Gen.Bool).Sample(
            (which, text, bare) =>
            {
                var catalog = new TestCatalog();
                string whole = catalog.Text(TestCatalog.Machine);
                MatchCollection values = Regex.Matches(whole, "(?<=: ?|\\[|, )(\"[^\"]*\"|[0-9.]+)");
                Match value = values[which % values.Count];
                string written = bare ? text : JsonSerializer.Serialize(text);
                AssertAnswered(catalog.Set(
                    TestCatalog.Machine, whole.Remove(value.Index, value.Length).Insert(value.Index, written)));
            },
            iter: 300);

    [Fact]
    public void Any_bytes_in_any_file_are_answered() =>
        Gen.Select(Pick([.. CsvFiles, TestCatalog.Machine]), Gen.Int[0, 3_000], Gen.Byte.Array[1, 6]).Sample(
            (file, start, bytes) =>
            {
                var catalog = new TestCatalog();
                byte[] whole = Encoding.UTF8.GetBytes(catalog.Text(file));
                start %= whole.Length;
                AssertAnswered(catalog.Set(file, [.. whole[..start], .. bytes, .. whole[start..]]));
            },
            iter: 300);

    private static Gen<string> Pick(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static void AssertAnswered(TestCatalog catalog)
    {
        ImportResult result = catalog.Read();

        Assert.Equal(result.Findings.Count == 0, result.Contents is not null);
        foreach (ImportFinding finding in result.Findings)
        {
            Assert.Contains(finding.Code, Codes);
            Assert.Contains(finding.File, catalog.Files);
            Assert.NotEmpty(finding.Reason);
        }
    }
}
