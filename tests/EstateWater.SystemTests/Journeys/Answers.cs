using Microsoft.Playwright;

namespace EstateWater.SystemTests.Journeys;

/// <summary>What a page's scripts were answered.</summary>
internal static class Answers
{
    /// <summary>The status of every answer from an address that comes from now on.</summary>
    public static List<int> To(IPage page, string path)
    {
        var statuses = new List<int>();
        page.Response += (_, response) =>
        {
            if (response.Url.Contains(path, StringComparison.Ordinal))
            {
                statuses.Add(response.Status);
            }
        };
        return statuses;
    }
}
