using System.Text.Json;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.Web;

/// <summary>
/// A question as it is understood: what is asked, of which catalog, to be answered in which form.
/// </summary>
/// <param name="Request">What is asked.</param>
/// <param name="Catalog">The catalog that it is asked of.</param>
/// <param name="Format">How the answer is written.</param>
/// <param name="Body">The body as it was sent.</param>
internal sealed record Question<T>(T Request, CatalogSnapshot Catalog, AnswerFormat Format, JsonElement Body)
    where T : class;

/// <summary>Reads questions from HTTP.</summary>
internal static class Question
{
    /// <summary>The question, or the answer to one that cannot be understood.</summary>
    public static async Task<(Question<T>? Question, ProblemAnswer? Refusal)> ReadAsync<T>(
        HttpRequest http, CurrentCatalog current, Func<JsonElement, CatalogSnapshot, FaultList, T?> read)
        where T : class
    {
        if (current.Snapshot is not { } catalog)
            return (null, CurrentCatalog.NotLoaded());
        (JsonDocument? json, ProblemAnswer? refusal) = await RequestBody.ReadAsync(http);
        using JsonDocument? body = json;
        if (body is null)
            return (null, refusal);

        DeprecationNotes.Of(http.HttpContext)?.NoteRequest(body.RootElement);
        FaultList faults = new(body.RootElement);
        QueryReader query = new(http, faults);
        AnswerFormat format = AnswerFormat.Read(query);
        query.RefuseOthers();
        return Read(body.RootElement.Clone(), catalog, format, faults, read);
    }

    /// <summary>The question that a body asks; what is already wrong with its address stands in the list.</summary>
    public static (Question<T>? Question, ProblemAnswer? Refusal) Read<T>(
        JsonElement body, CatalogSnapshot catalog, AnswerFormat format, FaultList faults,
        Func<JsonElement, CatalogSnapshot, FaultList, T?> read)
        where T : class
    {
        T? request = read(body, catalog, faults);
        return request is null || faults.Count > 0
            ? (null, Problems.Of(faults))
            : (new Question<T>(request, catalog, format, body), null);
    }
}
