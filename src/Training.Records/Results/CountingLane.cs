using System.Threading.Channels;

namespace Training.Records.Results;

/// <summary>
/// Counts the orders of some procedures beside those of the others. Nothing on the sheets is about two procedures, so what
/// the lanes count needs only to be put together; within a lane orders are counted as they come.
/// </summary>
internal sealed class CountingLane
{
    private const int OrdersAtOnce = 256;
    private const int MostWaiting = 8;

    private readonly Channel<List<KeptOrder>> waiting = Channel.CreateBounded<List<KeptOrder>>(MostWaiting);
    private readonly Task<int> counting;
    private List<KeptOrder> next = new(OrdersAtOnce);

    public CountingLane() => counting = Task.Run(CountAll);

    /// <summary>Everything that is new on the sheets; complete when the lane has ended.</summary>
    public List<object> Made { get; } = [];

    /// <summary>Takes an order, and waits while too many are waiting.</summary>
    public async ValueTask Take(KeptOrder order)
    {
        next.Add(order);
        if (next.Count == OrdersAtOnce) await Hand();
    }

    /// <summary>Ends the lane when all is counted.</summary>
    /// <returns>How many orders were counted.</returns>
    public async Task<int> End()
    {
        if (next.Count > 0) await Hand();
        waiting.Writer.TryComplete();
        return await counting;
    }

    private async ValueTask Hand()
    {
        try
        {
            await waiting.Writer.WriteAsync(next);
        }
        catch (ChannelClosedException)
        {
            // It was closed because the counting failed, which is told instead.
            await counting;
        }

        next = new(OrdersAtOnce);
    }

    private async Task<int> CountAll()
    {
        try
        {
            var (sheets, counted) = (new TallySheets { Added = Made.Add }, 0);
            await foreach (var orders in waiting.Reader.ReadAllAsync())
                foreach (var order in orders)
                {
                    if (await order.Judge() is not { } work) continue;
                    sheets.Count(work);
                    counted++;
                }

            return counted;
        }
        finally
        {
            waiting.Writer.TryComplete();
        }
    }
}
