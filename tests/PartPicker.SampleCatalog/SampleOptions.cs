using System.Globalization;

namespace PartPicker.SampleCatalog;

/// <summary>What the command line asks for.</summary>
/// <param name="Seed">Other seeds draw other parts of the same classes.</param>
/// <param name="Scale">How many times as many generated rows as in the committed catalog.</param>
/// <param name="Folder">Where the files go.</param>
public sealed record SampleOptions(int Seed, int Scale, string Folder)
{
    public const string Usage = "usage: [--seed N] [--scale 1..100] [--out FOLDER]";

    /// <summary>The seed and the scale of the committed catalog, and where it lies.</summary>
    public static readonly SampleOptions Standard = new(Seed: 1, Scale: 1, Folder: "catalog-samples");

    /// <summary>Ample for a load test, and well within the lines that an import takes.</summary>
    public const int MaxScale = 100;

    /// <exception cref="ArgumentException">An option is unknown, or has no value that it can take.</exception>
    public static SampleOptions Parse(IReadOnlyList<string> args)
    {
        SampleOptions options = Standard;
        for (int i = 0; i < args.Count; i += 2)
        {
            string value = i + 1 < args.Count
                ? args[i + 1]
                : throw new ArgumentException($"{args[i]} needs a value.");
            options = args[i] switch
            {
                "--seed" => options with { Seed = Whole(args[i], value, 0, int.MaxValue) },
                "--scale" => options with { Scale = Whole(args[i], value, 1, MaxScale) },
                "--out" => options with { Folder = value },
                _ => throw new ArgumentException($"There is no option {args[i]}."),
            };
        }

        return options;
    }

    private static int Whole(string option, string text, int least, int greatest) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value)
        && value >= least && value <= greatest
            ? value
            : throw new ArgumentException(
                $"{option} is a whole number from {least} to {greatest}, not \"{text}\".");
}
