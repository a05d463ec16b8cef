using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Bulk;

/// <summary>What a line came to: the bytes that the address for one would have sent, or a problem.</summary>
internal sealed record BulkReply(byte[]? Result, ProblemWire? Problem)
{
    public BulkReply(byte[]? result, ProblemAnswer? refusal) : this(result, refusal?.Problem)
    {
    }

    public int Status => Problem?.Status ?? StatusCodes.Status200OK;
}
