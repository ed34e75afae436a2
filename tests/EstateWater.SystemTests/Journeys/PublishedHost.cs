namespace EstateWater.SystemTests.Journeys;

/// <summary>The demo with its week published, so that every page has something to show. The tests on it only look.</summary>
public sealed class PublishedHost(Browser browser) : RunningHost
{
    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        var desk = await browser.DeskAsync(Address);
        await (await WeekDesk.OpenAsync(desk)).PublishAsync("Ana", "Go slowly.");
        await desk.Context.CloseAsync();
    }
}
