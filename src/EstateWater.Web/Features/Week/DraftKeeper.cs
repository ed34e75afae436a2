using System.Globalization;
using System.Text.Json;
using Microsoft.JSInterop;

namespace EstateWater.Web.Features.Week;

/// <summary>Keeps the changes of an open page in its browser tab, so that a reload or a lost connection does not lose them. They are kept for the estate's day.</summary>
/// <param name="browser">The tab.</param>
/// <param name="today">The estate's day.</param>
public sealed class DraftKeeper(IJSRuntime browser, DateOnly today)
{
    // What one page may leave in a tab; some hundred changes.
    private const int MostCharacters = 4096;

    private WeekEdits kept = WeekEdits.None;

    /// <summary>Why changes are not kept; null when they are.</summary>
    public string? Problem { get; private set; }

    private string Key => string.Create(CultureInfo.InvariantCulture, $"week-changes-{today:yyyy-MM-dd}");

    /// <summary>What was kept; nothing where nothing was.</summary>
    public async Task<WeekEdits> ReadAsync()
    {
        try
        {
            var text = await browser.InvokeAsync<string?>("sessionStorage.getItem", Key);
            return kept = text is null ? WeekEdits.None : WeekEdits.FromJson(text);
        }
        catch (Exception unreadable) when (unreadable is JsonException or JSException)
        {
            Problem = "Changes made before the page was loaded could not be read back.";
            return WeekEdits.None;
        }
    }

    /// <summary>Keeps changes, where they are not those kept last.</summary>
    public async Task KeepAsync(WeekEdits edits)
    {
        if (ReferenceEquals(kept, edits))
        {
            return;
        }

        kept = edits;
        var text = edits.ToJson();
        if (text.Length > MostCharacters)
        {
            Problem = "These are more changes than the browser keeps: publish before you leave the page.";
            return;
        }

        try
        {
            await browser.InvokeVoidAsync("sessionStorage.setItem", Key, text);
            Problem = null;
        }
        catch (JSException)
        {
            Problem = "This browser keeps nothing: publish before you leave the page.";
        }
    }
}
