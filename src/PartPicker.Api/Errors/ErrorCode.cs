namespace PartPicker.Api.Errors;

/// <summary>One thing that can be wrong with a request or inside the service.</summary>
/// <param name="Code">Stable word for machines; the anchor on the page of errors.</param>
/// <param name="Status">HTTP status when this is all that is wrong.</param>
/// <param name="Title">The same for people, without the details of the case.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="Remedy">What to do.</param>
internal sealed record ErrorCode(string Code, int Status, string Title, string Meaning, string Remedy)
{
    /// <summary>Where the code is explained, on the service itself.</summary>
    public string Type => $"{ErrorCodes.Page}#{Code}";
}
