using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Errors;

/// <summary>Every fault of a request is told at once, each with its place and code.</summary>
[Collection(ServiceTests.Name)]
public sealed class BadRequestTests(Service service)
{
    private static readonly Dictionary<string, BadRequest> Cases = new(
    [
        .. BadQuantities.Cases.Select(bad => KeyValuePair.Create($"quantity: {bad.Key}", bad.Value)),
        .. BadBodies.Cases.Select(bad => KeyValuePair.Create($"body: {bad.Key}", bad.Value)),
        .. BadAddresses.Cases.Select(bad => KeyValuePair.Create($"address: {bad.Key}", bad.Value)),
    ]);

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Faults_are_told_with_place_and_code(string name)
    {
        BadRequest bad = Cases[name];
        string[] address = bad.Address.Split(' ');
        Answer answer = address[0] == "GET"
            ? await service.GetAsync(address[1])
            : await service.PostAsync(address[1], bad.Body!);

        Assert.Equal(400, answer.Status);
        Assert.Equal("application/problem+json", answer.MediaType);
        Assert.Equal(bad.Faults, answer.Json["errors"]!.AsArray().Select(Line));
        string[] codes = [.. bad.Faults.Select(fault => fault.Split(' ')[1]).Distinct()];
        Assert.Equal(codes.Length == 1 ? codes[0] : "invalid-request", answer.Code);
        Assert.All(answer.Json["errors"]!.AsArray(), error => Assert.NotEmpty((string)error!["expected"]!));
    }

    /// <summary>The codes that the cases bring about.</summary>
    internal static IEnumerable<string> Codes => Cases.Values.SelectMany(bad => bad.Faults).Select(fault => fault.Split(' ')[1]);

    private static string Line(JsonNode? error) => $"{error!["pointer"]} {error["code"]}";
}
