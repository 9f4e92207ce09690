using System.Diagnostics;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Training.Records.Tests;

/// <summary>Counts what is asked of the database by the test that made it, until it is disposed of.</summary>
internal sealed class QueryCount : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
{
    private static readonly AsyncLocal<QueryCount?> Counting = new();
    private readonly List<IDisposable> subscriptions = [];
    private int asked;

    public QueryCount()
    {
        Counting.Value = this;
        subscriptions.Add(DiagnosticListener.AllListeners.Subscribe(this));
    }

    public int Asked => asked;

    public void OnNext(DiagnosticListener value)
    {
        if (value.Name == "Microsoft.EntityFrameworkCore") subscriptions.Add(value.Subscribe(this));
    }

    public void OnNext(KeyValuePair<string, object?> value)
    {
        // Tests run side by side in one process; what another asks is not this one's.
        if (value.Key == RelationalEventId.CommandExecuted.Name && Counting.Value == this) Interlocked.Increment(ref asked);
    }

    public void OnCompleted()
    {
    }

    public void OnError(Exception error)
    {
    }

    public void Dispose()
    {
        Counting.Value = null;
        foreach (var subscription in subscriptions) subscription.Dispose();
    }
}
