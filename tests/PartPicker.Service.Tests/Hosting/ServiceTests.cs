using Xunit;

namespace PartPicker.Service.Tests;

/// <summary>One running service for every test that only asks: they need not wait for a start each.</summary>
[CollectionDefinition(Name)]
public sealed class ServiceTests : ICollectionFixture<Service>
{
    public const string Name = "service";
}
