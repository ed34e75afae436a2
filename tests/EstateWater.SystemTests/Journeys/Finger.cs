using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>A finger on the glass, as the browser itself is told of it: it scrolls and presses as a real one does.</summary>
internal sealed class Finger
{
    private const int Steps = 12;

    private readonly ICDPSession glass;
    private (float X, float Y) at;

    private Finger(ICDPSession glass) => this.glass = glass;

    public static async Task<Finger> OnAsync(IPage page) => new(await page.Context.NewCDPSessionAsync(page));

    public Task DownAsync(float x, float y)
    {
        at = (x, y);
        return TellAsync("touchStart", at);
    }

    public async Task MoveAsync(float x, float y)
    {
        var from = at;
        for (var step = 1; step <= Steps; step++)
        {
            at = (from.X + ((x - from.X) * step / Steps), from.Y + ((y - from.Y) * step / Steps));
            await TellAsync("touchMove", at);
        }
    }

    public Task UpAsync() => TellAsync("touchEnd");

    private async Task TellAsync(string type, params (float X, float Y)[] points) => await glass.SendAsync("Input.dispatchTouchEvent", new()
    {
        ["type"] = type,
        ["touchPoints"] = points.Select(p => new Dictionary<string, object> { ["x"] = p.X, ["y"] = p.Y }).ToArray(),
    });
}
