namespace EstateWater.SystemTests.Journeys;

/// <summary>Pages before the sign-in and about it: the demo has none of them, so they are looked at where people sign in. The very first start is looked at by those who set that program up.</summary>
internal static class DoorPages
{
    /// <summary>Whether a page is one.</summary>
    public static bool Has(string path) => path is "/sign-in" or "/account" || path.StartsWith("/join/", StringComparison.Ordinal);

    /// <summary>Opens one: the account of whoever signed in, an invitation that stands.</summary>
    public static async Task<PageVisit> VisitAsync(Browser browser, PeopleHost people, string path, int width, string preferences)
    {
        var manager = await people.ManagerAsync(browser);
        var address = path.StartsWith("/join/", StringComparison.Ordinal) ? await PeopleHost.InviteAsync(manager, $"Ben {Guid.NewGuid():N}", "irrigator") : path;
        await manager.Context.CloseAsync();
        return await EveryPage.VisitAsync(browser, people.Address, address, width, preferences, path == "/account" ? page => PeopleHost.SignInAsync(page, "Mara") : null);
    }
}
