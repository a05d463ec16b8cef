using System.Collections.Concurrent;

namespace PartPicker.Api.Bulk;

/// <summary>Threads that compute the lines of bulk runs, so that those of the pool are left to everybody else.</summary>
internal sealed class BulkThreads : TaskScheduler, IDisposable
{
    private readonly BlockingCollection<Task> waiting = [];

    public BulkThreads(int count)
    {
        for (int i = 0; i < count; i++)
            new Thread(Work) { IsBackground = true, Name = "bulk" }.Start();
    }

    /// <summary>Runs a line on one of these threads; where it waits, it goes on there too.</summary>
    public Task<T> RunAsync<T>(Func<Task<T>> line, CancellationToken stop) =>
        Task.Factory.StartNew(line, stop, TaskCreationOptions.None, this).Unwrap();

    public void Dispose() => waiting.CompleteAdding();

    protected override void QueueTask(Task task) => waiting.Add(task);

    protected override bool TryExecuteTaskInline(Task task, bool taskWasPreviouslyQueued) => false;

    protected override IEnumerable<Task> GetScheduledTasks() => [.. waiting];

    private void Work()
    {
        foreach (Task task in waiting.GetConsumingEnumerable())
            TryExecuteTask(task);
    }
}
