using System.Reflection;
using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Errors;

public sealed class ErrorCodeTests
{
    [Fact]
    public void Every_code_of_the_selection_is_listed()
    {
        foreach (string code in Constants(typeof(RequestProblemCodes)))
            Assert.Equal(code, ErrorCodes.Of(code).Code);
    }

    [Fact]
    public void Every_code_that_the_service_can_send_is_listed()
    {
        IEnumerable<ErrorCode> declared = typeof(ErrorCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => field.GetValue(null)).OfType<ErrorCode>();

        Assert.Equal(declared.Order(ByCode), ErrorCodes.All.Order(ByCode));
    }

    [Fact]
    public void A_code_is_listed_once_and_explained()
    {
        Assert.Equal(ErrorCodes.All.Count, ErrorCodes.All.Select(code => code.Code).Distinct().Count());
        foreach (ErrorCode code in ErrorCodes.All)
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", code.Code);
            Assert.InRange(code.Status, 400, 599);
            Assert.NotEmpty(code.Title);
            Assert.EndsWith(".", code.Meaning);
            Assert.EndsWith(".", code.Remedy);
        }
    }

    [Fact]
    public void Faults_of_one_kind_give_their_code_to_the_whole()
    {
        FaultList faults = new();
        faults.Add(ErrorCodes.OutOfRange, "/count", "0", "a whole number from 1 to 50");
        faults.Add(ErrorCodes.OutOfRange, "/slipMargin", "9", "a bare number from 0 to 5");
        Assert.Equal("out-of-range", Problems.Of(faults).Problem.Code);

        faults.Add(ErrorCodes.UnknownParameter, "unit", "inch", "one of: units, precision");
        Assert.Equal("invalid-request", Problems.Of(faults).Problem.Code);
        Assert.Equal(400, Problems.Of(faults).Problem.Status);
    }

    [Fact]
    public void A_problem_of_the_selection_points_into_the_body()
    {
        using JsonDocument body = JsonDocument.Parse("""{ "machine": "a", "fitted": { "hole": 9 }, "keep": ["helix"] }""");
        ProblemAnswer answer = Problems.Of(
            [
                new RequestProblem("fitted/hole", RequestProblemCodes.UnknownHole, "9 of old", "one of: 1, 2"),
                new RequestProblem("machine/baselines/0", RequestProblemCodes.BaselineUnusable, "9001 rpm", "a run that can be"),
                new RequestProblem("keep", RequestProblemCodes.KeptPartDoesNotFit, "helix: hx", "a kept part that fits"),
                new RequestProblem("outlet", RequestProblemCodes.OutletNeeded, null, "an outlet"),
            ],
            body.RootElement);

        Assert.Equal(["9", "\"a\"", "helix: hx", null], answer.Problem.Errors.Select(error => error.Sent));
        Assert.Equal("a run that can be; the catalog has 9001 rpm", answer.Problem.Errors[1].Expected);
        Assert.Equal(["/fitted/hole", "/machine", "/keep", "/outlet"], answer.Problem.Errors.Select(error => error.Pointer));
        Assert.Equal(["unknown-hole", "baseline-unusable", "kept-part-does-not-fit", "outlet-needed"], answer.Problem.Errors.Select(error => error.Code));
    }

    private static IEnumerable<string> Constants(Type type) => type.GetFields(BindingFlags.Public | BindingFlags.Static)
        .Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!);

    private static readonly Comparer<ErrorCode> ByCode =
        Comparer<ErrorCode>.Create((a, b) => string.CompareOrdinal(a.Code, b.Code));
}
