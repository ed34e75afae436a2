namespace EstateWater.Web.State;

/// <summary>Keeps one snapshot a data version for all pages: made once, shared, made anew when the data or the hour change.</summary>
/// <param name="build">Makes the snapshot of a version.</param>
/// <param name="clock">Tells when a snapshot has become old.</param>
public sealed class EstateSnapshots(Func<long, CancellationToken, Task<EstateSnapshot>> build, TimeProvider clock) : IAsyncDisposable, IDisposable
{
    /// <summary>A plan looks from its moment: after this long it is made again even when no data came.</summary>
    private static readonly TimeSpan MaxAge = TimeSpan.FromHours(1);

    private readonly Lock gate = new();
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly CancellationTokenSource stopping = new();
    private readonly List<Action<EstateNews>> subscribers = [];
    private Task<EstateSnapshot>? current;
    private volatile EstateSnapshot? settled;
    private DateTimeOffset startedAt;
    private long version;

    /// <summary>The snapshot of the present version. Stopping one reader's wait does not stop the work for the others.</summary>
    public Task<EstateSnapshot> GetAsync(CancellationToken cancellationToken = default)
    {
        Task<EstateSnapshot> task;
        lock (gate)
        {
            var now = clock.GetUtcNow();
            if (current is null || current.IsFaulted || now - startedAt > MaxAge)
            {
                Start(now);
            }

            task = current!;
        }

        return task.WaitAsync(cancellationToken);
    }

    /// <summary>The snapshot finished last; null before the first.</summary>
    public EstateSnapshot? Settled => settled;

    /// <summary>
    /// The snapshot finished last, though a newer one may be in the making: for pages that show the estate but not its plan,
    /// on phones that would take a wait of seconds for a lost signal.
    /// </summary>
    public Task<EstateSnapshot> GetSettledAsync(CancellationToken cancellationToken = default) =>
        settled is { HasEstate: true } done ? Task.FromResult(done) : GetAsync(cancellationToken);

    /// <summary>Says that the data changed: the next reader gets a new snapshot, and subscribers hear of it once it is made.</summary>
    /// <param name="what">What changed, as one short sentence for people.</param>
    public void Invalidate(string what = "The estate’s data changed.")
    {
        Task<EstateSnapshot> task;
        lock (gate)
        {
            Start(clock.GetUtcNow());
            task = current!;
        }

        _ = task.ContinueWith(
            done => Tell(new EstateNews(done.Result.Version, what)),
            CancellationToken.None,
            TaskContinuationOptions.OnlyOnRanToCompletion,
            TaskScheduler.Default);
    }

    /// <summary>Hears of every change until the answer is disposed.</summary>
    public IDisposable Subscribe(Action<EstateNews> onChanged)
    {
        lock (gate)
        {
            subscribers.Add(onChanged);
        }

        return new Subscription(this, onChanged);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        turn.Dispose();
        stopping.Dispose();
    }

    /// <summary>Stops a snapshot in the making, and waits until it reads the database no more.</summary>
    public async ValueTask DisposeAsync()
    {
        await stopping.CancelAsync();
        await turn.WaitAsync();
        Dispose();
    }

    /// <summary>How many listen now.</summary>
    public int SubscriberCount
    {
        get
        {
            lock (gate)
            {
                return subscribers.Count;
            }
        }
    }

    private void Start(DateTimeOffset now)
    {
        var next = ++version;
        startedAt = now;
        // Off the caller's thread: planning takes processor time, and the caller may be a circuit.
        current = Task.Run(() => BuildInTurnAsync(next));
    }

    // One build at a time; of those that wait, only the newest is made, and the others give its answer.
    private async Task<EstateSnapshot> BuildInTurnAsync(long mine)
    {
        await turn.WaitAsync(stopping.Token);
        try
        {
            if (mine == Volatile.Read(ref version))
            {
                return settled = await build(mine, stopping.Token);
            }
        }
        finally
        {
            turn.Release();
        }

        return await GetAsync();
    }

    private void Tell(EstateNews news)
    {
        Action<EstateNews>[] listeners;
        lock (gate)
        {
            listeners = [.. subscribers];
        }

        foreach (var listener in listeners)
        {
            listener(news);
        }
    }

    private sealed class Subscription(EstateSnapshots owner, Action<EstateNews> onChanged) : IDisposable
    {
        public void Dispose()
        {
            lock (owner.gate)
            {
                owner.subscribers.Remove(onChanged);
            }
        }
    }
}

/// <summary>Word of a change.</summary>
/// <param name="Version">The snapshot version that shows it.</param>
/// <param name="What">What changed, as one short sentence.</param>
public sealed record EstateNews(long Version, string What);
