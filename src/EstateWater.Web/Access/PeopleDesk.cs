using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Access;

/// <summary>What a manager does with people. Every act stands in the record of changes, or is not done.</summary>
/// <param name="people">Their accounts.</param>
/// <param name="db">The store, the same in which the accounts are kept.</param>
/// <param name="links">Makes the links that are given out.</param>
/// <param name="sessions">Hears whose sign-in no longer holds.</param>
/// <param name="clock">Says which links still open.</param>
/// <param name="estateTime">The clock of the record of changes.</param>
public sealed class PeopleDesk(UserManager<Person> people, EstateDb db, OneTimeLinks links, Sessions sessions, SessionClock clock, TimeProvider estateTime)
{
    /// <summary>Everyone, by name.</summary>
    public Task<List<Person>> EveryoneAsync(CancellationToken cancellation = default) =>
        db.People.AsNoTracking().OrderBy(p => p.NormalizedUserName).ToListAsync(cancellation);

    /// <summary>Links that still open, the newest first.</summary>
    public async Task<List<Invitation>> OpenLinksAsync(CancellationToken cancellation = default)
    {
        var now = clock.Now;
        return await db.Invitations.AsNoTracking().Where(i => i.UsedAt == null && i.WithdrawnAt == null && i.ExpiresAt > now).OrderByDescending(i => i.Id).ToListAsync(cancellation);
    }

    /// <summary>Invites someone. Gives the secret of the link, which is shown once, or why it cannot be.</summary>
    /// <param name="name">As typed.</param>
    /// <param name="role">What they will do.</param>
    /// <param name="by">Who invites.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<(string? Secret, string? Problem)> InviteAsync(string name, PersonRole role, string by, CancellationToken cancellation = default)
    {
        var cleaned = PersonName.Clean(name);
        if (!PersonName.IsGood(cleaned))
        {
            return (null, $"A name has 1 to {Person.LongestName} letters, like “Ana Ruiz”.");
        }

        if (await people.FindByNameAsync(cleaned) is not null)
        {
            return (null, $"{cleaned} is here already. Two people need two names, like “{cleaned} R.”.");
        }

        return (await links.InviteAsync(cleaned, role, by, cancellation), null);
    }

    /// <summary>Gives someone who forgot their password a link to set another. Gives its secret, or why it cannot be.</summary>
    public async Task<(string? Secret, string? Problem)> NewPasswordLinkAsync(string personId, string by, CancellationToken cancellation = default) =>
        await people.FindByIdAsync(personId) is not { } person ? (null, Unknown)
        : person.LockedAt is not null ? (null, $"{person.UserName} is locked out; unlock them first.")
        : (await links.NewPasswordAsync(person, by, OneTimeLinks.GoodFor, cancellation), null);

    /// <summary>Takes a link back. Gives why it cannot be; null when it was.</summary>
    public async Task<string?> WithdrawAsync(int invitationId, string by, CancellationToken cancellation = default)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await db.Invitations.SingleOrDefaultAsync(i => i.Id == invitationId, cancellation) is not { } invitation || !invitation.IsOpen(clock.Now))
        {
            return "This link was used or has run out already.";
        }

        invitation.WithdrawnAt = clock.Now;
        Record(by, $"Took the link of {invitation.Name} back");
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return null;
    }

    /// <summary>Gives someone another role; what they have open ends. Gives why it cannot be; null when it was.</summary>
    public Task<string?> ChangeRoleAsync(string personId, PersonRole role, string by, CancellationToken cancellation = default) => ActAsync(
        personId,
        by,
        endsManager: role != PersonRole.Manager,
        person =>
        {
            var before = RoleWords.Of(person.Role);
            person.Role = role;
            return ($"{person.UserName} is {RoleWords.Of(role)} now", before);
        },
        cancellation);

    /// <summary>Locks someone out; what they have open ends. Gives why it cannot be; null when it was.</summary>
    public Task<string?> LockAsync(string personId, string by, CancellationToken cancellation = default) => ActAsync(
        personId,
        by,
        endsManager: true,
        person =>
        {
            person.LockedAt = clock.Now;
            return ($"Locked {person.UserName} out", null);
        },
        cancellation);

    /// <summary>Lets someone in again. Gives why it cannot be; null when it was.</summary>
    public Task<string?> UnlockAsync(string personId, string by, CancellationToken cancellation = default) => ActAsync(
        personId,
        by,
        endsManager: false,
        person =>
        {
            person.LockedAt = null;
            person.LockoutEnd = null;
            person.AccessFailedCount = 0;
            return ($"Let {person.UserName} in again", null);
        },
        cancellation);

    /// <summary>Ends what someone has open on every phone and computer. Gives why it cannot be; null when it was.</summary>
    public Task<string?> SignOutEverywhereAsync(string personId, string by, CancellationToken cancellation = default) =>
        ActAsync(personId, by, endsManager: false, person => ($"Signed {person.UserName} out everywhere", null), cancellation);

    private const string Unknown = "There is no such person any more.";

    private async Task<string?> ActAsync(string personId, string by, bool endsManager, Func<Person, (string What, string? Before)> act, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await people.FindByIdAsync(personId) is not { } person)
        {
            return Unknown;
        }

        if (endsManager && await IsLastManagerAsync(person, cancellation))
        {
            return $"{person.UserName} is the only manager who can sign in; make someone else manager first.";
        }

        var (what, before) = act(person);

        // The new stamp ends every sign-in, and with it everything that was open under the old role.
        var result = await people.UpdateSecurityStampAsync(person);
        if (!result.Succeeded)
        {
            throw new InvalidOperationException(string.Join(" ", result.Errors.Select(e => e.Description)));
        }

        Record(by, what, before);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        sessions.Forget(personId);
        return null;
    }

    private async Task<bool> IsLastManagerAsync(Person person, CancellationToken cancellation) =>
        person is { Role: PersonRole.Manager, LockedAt: null }
        && !await db.People.AnyAsync(p => p.Id != person.Id && p.Role == PersonRole.Manager && p.LockedAt == null, cancellation);

    private void Record(string by, string what, string? before = null) =>
        db.Changes.Add(new ChangeRecord { At = estateTime.GetUtcNow(), By = by, Kind = ChangeKind.Person, What = what, Before = before });
}
