using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using EstateWater.Web.Access;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.News;

/// <summary>Tells open pages, as it happens, that the data changed. A stream of events costs the server a few kilobytes a page; a circuit would cost far more.</summary>
public static class NewsEndpoint
{
    /// <summary>Serves the stream at <c>/news</c>.</summary>
    public static void MapNews(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/news", (EstateSnapshots snapshots, IHostApplicationLifetime lifetime, CancellationToken gone) =>
            TypedResults.ServerSentEvents(Stream(snapshots, lifetime.ApplicationStopping, gone))).RequireAuthorization(Policies.Estate);

    private static async IAsyncEnumerable<SseItem<EstateNews>> Stream(
        EstateSnapshots snapshots, CancellationToken stopping, [EnumeratorCancellation] CancellationToken gone)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping, gone);
        // Only the newest word matters to a slow reader.
        var news = Channel.CreateBounded<EstateNews>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        using var subscription = snapshots.Subscribe(item => news.Writer.TryWrite(item));

        // The page compares this with its own version: what changed while it was being fetched is not lost.
        var now = await snapshots.GetAsync(either.Token);
        yield return new SseItem<EstateNews>(new EstateNews(now.Version, "The estate’s data changed."), "news");
        while (await WaitFor(news.Reader, either.Token))
        {
            while (news.Reader.TryRead(out var item))
            {
                yield return new SseItem<EstateNews>(item, "news");
            }
        }
    }

    private static async Task<bool> WaitFor(ChannelReader<EstateNews> reader, CancellationToken cancellation)
    {
        try
        {
            return await reader.WaitToReadAsync(cancellation);
        }
        catch (OperationCanceledException)
        {
            return false; // The visitor left, or the program stops: the ordinary end of a stream.
        }
    }
}
