using PartPicker.SampleCatalog;

try
{
    SampleOptions options = SampleOptions.Parse(args);
    IReadOnlyList<CsvFile> files = SampleFiles.Make(options.Seed, options.Scale);
    foreach (CsvFile file in files)
        file.WriteBelow(options.Folder);
    Console.WriteLine($"{files.Sum(f => f.Ids.Count)} rows in {files.Count} files below {options.Folder}");
    return 0;
}
catch (ArgumentException wrong)
{
    Console.Error.WriteLine(wrong.Message);
    Console.Error.WriteLine(SampleOptions.Usage);
    return 2;
}
