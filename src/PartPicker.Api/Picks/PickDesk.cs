using System.Diagnostics;
using PartPicker.Api.Errors;
using PartPicker.Api.Web;
using PartPicker.Api.Wire;
using PartPicker.Selection;
using PartPicker.Storage;

namespace PartPicker.Api.Picks;

/// <summary>What a question for a pick came to: one of stored, unkept and refusal.</summary>
/// <param name="Stored">An answer that is kept.</param>
/// <param name="Unkept">The bytes of an answer that is not.</param>
/// <param name="Refusal">Why there is none.</param>
internal sealed record PickReply(StoredPick? Stored = null, byte[]? Unkept = null, ProblemAnswer? Refusal = null)
{
    /// <summary>What was done for it, for the header Server-Timing; null when nothing was searched.</summary>
    public string? Timing { get; init; }

    /// <summary>The bytes of the answer; null when there is none.</summary>
    public byte[]? Answer => Stored?.Body ?? Unkept;
}

/// <summary>Answers picks: from the store, or by a search.</summary>
internal sealed class PickDesk(IPickStore store, TimeProvider clock, SearchGate gate)
{
    /// <param name="question">What is asked.</param>
    /// <param name="callerGone">Set when the caller went away.</param>
    /// <param name="oneOfMany">
    /// True for a line of a bulk run: it has its place already, and its answer is not kept, so that a long run does not
    /// fill the store.
    /// </param>
    public async Task<PickReply> AnswerAsync(
        Question<PickRequest> question, CancellationToken callerGone, bool oneOfMany = false)
    {
        string id = PickIdentity.Of(question.Request, question.Format, question.Catalog.Revision).ToId();
        if (store.Find(id, clock.GetUtcNow()) is { } known)
            return new PickReply(Stored: known);

        long started = Stopwatch.GetTimestamp();
        Outcome<PickAnswer>? outcome;
        try
        {
            outcome = oneOfMany
                ? gate.RunLine(stop => Search(question, stop), callerGone)
                : await gate.RunAsync(stop => Search(question, stop), callerGone);
        }
        catch (OperationCanceledException) when (!callerGone.IsCancellationRequested)
        {
            return new PickReply(Refusal: Problems.Of(
                ErrorCodes.TookTooLong, $"The search was stopped after {gate.MaxTime.TotalSeconds} seconds."));
        }

        if (outcome is null)
            return new PickReply(Refusal: gate.Full());
        if (outcome.Answer is not { } answer)
            return new PickReply(Refusal: Problems.Of(outcome.Problems, question.Body));
        double tookMs = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        string timing = $"search;dur={tookMs:F1}, predictions;desc=\"{answer.Work.Predictions}\"";
        AnswerWriter writer = new(question.Catalog, question.Format);
        byte[] bytes = WireJson.Bytes(PickWriter.Write(id, question.Request, answer, writer));
        if (oneOfMany || answer.Work.TimeWasUp)
            return new PickReply(Unkept: bytes) { Timing = timing };
        StoredPick stored = store.Keep(
            id, question.Catalog.Revision, PartSelection.ModelVersion, bytes, clock.GetUtcNow());
        return new PickReply(Stored: stored) { Timing = timing };
    }

    private Outcome<PickAnswer> Search(Question<PickRequest> question, CancellationToken stop)
    {
        using var timeUp = new CancellationTokenSource(RequestLimits.SearchDeadline, clock);
        return PartSelection.Pick(question.Catalog, question.Request, stop, timeUp.Token);
    }
}
