using System.Text.Json;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Errors;

/// <summary>Makes the answer to a request that cannot be served; the only place that does.</summary>
internal static class Problems
{
    /// <summary>One thing is wrong, and it is not a member of the body.</summary>
    /// <param name="code">What is wrong.</param>
    /// <param name="detail">The details of this case.</param>
    /// <param name="status">The HTTP status where it is not the usual one of the code.</param>
    public static ProblemAnswer Of(ErrorCode code, string detail, int? status = null) => new(new ProblemWire
    {
        Type = code.Type,
        Title = code.Title,
        Status = status ?? code.Status,
        Detail = detail,
        Code = code.Code,
        Errors = [],
    });

    /// <summary>
    /// Everything that is wrong with a request. One kind of fault gives its own code to the whole.
    /// </summary>
    public static ProblemAnswer Of(FaultList faults)
    {
        ErrorCode[] kinds = [.. faults.Listed.Select(fault => fault.Code).Distinct()];
        ErrorCode whole = kinds.Length == 1 ? kinds[0] : ErrorCodes.InvalidRequest;
        return new ProblemAnswer(new ProblemWire
        {
            Type = whole.Type,
            Title = whole.Title,
            Status = 400,
            Detail = Detail(faults),
            Code = whole.Code,
            Errors = [.. faults.Listed.Select(fault => new ProblemErrorWire
            {
                Pointer = fault.Pointer, Code = fault.Code.Code, Sent = fault.Sent, Expected = fault.Expected,
            })],
        });
    }

    /// <summary>What the selection found wrong with a body.</summary>
    public static ProblemAnswer Of(IReadOnlyList<RequestProblem> problems, JsonElement body)
    {
        FaultList faults = new(body);
        foreach (RequestProblem problem in problems)
        {
            // What lies inside a machine is in the catalog and not in the body, where the machine is an id.
            bool inCatalog = problem.Place.StartsWith("machine/", StringComparison.Ordinal);
            string known = inCatalog && problem.Sent is { } value ? $"; the catalog has {value}" : "";
            faults.Add(
                ErrorCodes.Of(problem.Code), inCatalog ? "/machine" : "/" + problem.Place, problem.Sent,
                problem.Expected + known);
        }

        return Of(faults);
    }

    private static string Detail(FaultList faults)
    {
        Fault first = faults.Listed[0];
        if (faults.Count == 1)
            return Told(first);
        string listed = faults.Count > faults.Listed.Count
            ? $"the first {faults.Listed.Count} of them"
            : "each of them";
        return $"{faults.Count} faults were found; errors lists {listed}. The first: {Told(first)}";
    }

    private static string Told(Fault fault)
    {
        string place = fault.InQuery ? $"Query parameter {fault.Pointer}"
            : fault.Pointer.Length > 0 ? fault.Pointer
            : "The body";
        return fault.Sent is { } sent
            ? $"{place}, sent as {sent}: {fault.Expected}"
            : $"{place}: {fault.Expected}";
    }
}
