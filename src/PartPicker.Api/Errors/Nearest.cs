namespace PartPicker.Api.Errors;

/// <summary>Finds which known word was probably meant by one that is not known.</summary>
internal static class Nearest
{
    // A third of the letters may be wrong, and never more than three: beyond that it is another word.
    private const int LettersPerEdit = 3;
    private const int MaxEdits = 3;

    /// <summary>A question to end a sentence with; empty where nothing is near.</summary>
    public static string Hint(string sent, IEnumerable<string> known)
    {
        string? nearest = null;
        int bound = Math.Clamp(sent.Length / LettersPerEdit, 1, MaxEdits) + 1;
        foreach (string word in known)
        {
            // Words differ by at least as many edits as their lengths.
            if (Math.Abs(word.Length - sent.Length) >= bound || Edits(sent, word) is var edits && edits >= bound)
                continue;
            bound = edits;
            nearest = word;
        }

        return nearest is null ? "" : $". Did you mean \"{nearest}\"?";
    }

    /// <summary>What ends a sentence: the question, or a full stop where nothing is near.</summary>
    public static string End(string sent, IEnumerable<string> known) =>
        Hint(sent, known) is { Length: > 0 } hint ? hint : ".";

    /// <summary>Letters to put in, leave out, change or exchange with the next, whatever the case.</summary>
    private static int Edits(string a, string b)
    {
        int[,] edits = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
                edits[i, j] = i == 0 || j == 0 ? i + j : Least(i, j);
        }

        return edits[a.Length, b.Length];

        int Least(int i, int j)
        {
            int changed = edits[i - 1, j - 1] + (Same(i, j) ? 0 : 1);
            int least = Math.Min(changed, 1 + Math.Min(edits[i - 1, j], edits[i, j - 1]));
            return i > 1 && j > 1 && Same(i, j - 1) && Same(i - 1, j)
                ? Math.Min(least, edits[i - 2, j - 2] + 1)
                : least;
        }

        bool Same(int i, int j) => char.ToUpperInvariant(a[i - 1]) == char.ToUpperInvariant(b[j - 1]);
    }
}
