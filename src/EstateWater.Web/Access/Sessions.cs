using System.Collections.Concurrent;
using System.Security.Claims;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Access;

/// <summary>Whether what a visitor carries still holds: the same role, the same stamp, not locked out.</summary>
/// <remarks>What was found holds for a while, so that no page waits for the store; commands ask anew.</remarks>
/// <param name="databases">Where people are kept.</param>
/// <param name="clock">Tells how old an answer is.</param>
public sealed class Sessions(IDbContextFactory<EstateDb> databases, SessionClock clock)
{
    /// <summary>So long an answer holds for pages, where nothing told us of a change.</summary>
    public static readonly TimeSpan HoldsFor = TimeSpan.FromSeconds(30);

    private readonly ConcurrentDictionary<string, (DateTimeOffset At, Standing? Found)> known = new();

    /// <summary>Whether a visitor is still who they were when they signed in.</summary>
    /// <param name="user">The visitor.</param>
    /// <param name="anew">Whether the store must be asked, because something is about to change.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<bool> StandsAsync(ClaimsPrincipal user, bool anew, CancellationToken cancellation = default) =>
        user.PersonId() is { } id
        && await FindAsync(id, anew, cancellation) is { IsLocked: false } found
        && found.Role == user.Role()
        && found.Stamp == user.FindFirstValue(PersonPrincipal.StampClaim);

    /// <summary>Forgets what was found of a person, who was changed.</summary>
    public void Forget(string personId) => known.TryRemove(personId, out _);

    private async Task<Standing?> FindAsync(string id, bool anew, CancellationToken cancellation)
    {
        var now = clock.Now;
        if (!anew && known.TryGetValue(id, out var before) && now - before.At < HoldsFor)
        {
            return before.Found;
        }

        await using var db = await databases.CreateDbContextAsync(cancellation);
        var found = await db.People.AsNoTracking().Where(p => p.Id == id)
            .Select(p => new Standing(p.SecurityStamp!, p.Role, p.LockedAt != null)).SingleOrDefaultAsync(cancellation);
        known[id] = (now, found);
        return found;
    }

    private sealed record Standing(string Stamp, PersonRole Role, bool IsLocked);
}
