using PartPicker.Benchmarks;

switch (args)
{
    case ["search"]:
        SearchBenchmark.Run(SearchBenchmark.Standard, Console.Out);
        return 0;
    case ["search", var size] when double.TryParse(size, System.Globalization.CultureInfo.InvariantCulture, out double wanted) && wanted >= SearchBenchmark.Standard[0].Nominal:
        SearchBenchmark.Run([.. SearchBenchmark.Standard.Where(s => s.Nominal <= wanted)], Console.Out);
        return 0;
    case ["prediction"]:
        PredictionBenchmark.Run(Console.Out);
        return 0;
    case ["http"]:
        await HttpBenchmark.RunAsync(Console.Out);
        return 0;
    case ["lines"]:
        await BulkBenchmark.RunLinesAsync(Console.Out);
        return 0;
    case ["bulk"]:
        await BulkBenchmark.RunAsync(BulkBenchmark.StandardLongRun, Console.Out);
        return 0;
    case ["bulk", var lines] when int.TryParse(lines, System.Globalization.CultureInfo.InvariantCulture, out int count) && count >= 10:
        await BulkBenchmark.RunAsync(count, Console.Out);
        return 0;
    case ["overload"]:
        await OverloadBenchmark.RunAsync(Console.Out);
        return 0;
    default:
        Console.Error.WriteLine("usage: search [greatest size, 1e6 or more, as 1e8] | prediction | http | lines | bulk [lines of the long run, as 1000000] | overload");
        return 2;
}
