using System.Runtime.CompilerServices;

// The judge of the search tries every set of the same pools.
[assembly: InternalsVisibleTo("PartPicker.TestKit")]
[assembly: InternalsVisibleTo("PartPicker.Tests")]
[assembly: InternalsVisibleTo("PartPicker.Benchmarks")]
