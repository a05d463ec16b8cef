using System.Text;

namespace PartPicker.Catalog;

/// <summary>Bytes to text: UTF-8 and nothing else, since a guessed encoding changes names without a word.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding Strict =
        new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The text without a byte order mark; null when there is a finding.</summary>
    public static string? Read(FolderFile file, Findings findings)
    {
        byte[] bytes;
        try
        {
            long length = new FileInfo(file.Path).Length;
            if (length > ImportLimits.MaxFileBytes)
            {
                Refuse(null, new(
                    FindingCodes.FileTooLarge,
                    $"The file has {length} bytes; at most {ImportLimits.MaxFileBytes} are read. Split it."));
                return null;
            }

            bytes = File.ReadAllBytes(file.Path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Refuse(null, new(FindingCodes.UnreadableFile, $"The file cannot be read: {Why(e)}"));
            return null;
        }

        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] || bytes.Contains((byte)0))
        {
            Refuse(null, new(FindingCodes.NotUtf8, "The file is UTF-16 or no text at all. Save it as UTF-8."));
            return null;
        }

        try
        {
            return Strict.GetString(bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes);
        }
        catch (DecoderFallbackException e)
        {
            int line = 1 + bytes.Take(e.Index).Count(b => b == '\n');
            Refuse(line, new(
                FindingCodes.NotUtf8,
                "The line holds a byte that is not UTF-8: the file is in another encoding. Save it as UTF-8."));
            return null;
        }

        void Refuse(int? line, Refusal refusal) => findings.Add(file.Name, line, null, null, refusal);
    }

    private static string Why(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "what it links to is not there. Put the file itself here.",
        UnauthorizedAccessException => "this account may not read it. Give it the right to.",
        _ => "another program holds it, or its disk does not answer. Close what uses it and import again.",
    };
}
