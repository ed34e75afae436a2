using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Access;

/// <summary>Makes the links by which one person sets a password, once.</summary>
/// <param name="db">Where they are kept, as hashes.</param>
/// <param name="clock">Says when they run out.</param>
/// <param name="estateTime">The clock of the record of changes.</param>
public sealed class OneTimeLinks(EstateDb db, SessionClock clock, TimeProvider estateTime)
{
    /// <summary>A manager's link that nobody used by then opens nothing: it may wait in a message.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromDays(7);

    /// <summary>The console's is used by whoever sits there, as the code of the first start is.</summary>
    public static readonly TimeSpan AtConsoleGoodFor = FirstStart.GoodFor;

    /// <summary>Invites a new person. Gives the secret of the link, which is shown once.</summary>
    /// <param name="name">Theirs, cleaned.</param>
    /// <param name="role">What they will do.</param>
    /// <param name="by">Who invites.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public Task<string> InviteAsync(string name, PersonRole role, string by, CancellationToken cancellation = default) =>
        MakeAsync(name, role, null, by, GoodFor, $"Invited {name} as {RoleWords.Of(role)}", cancellation);

    /// <summary>Lets someone set another password. Gives the secret of the link, which is shown once.</summary>
    /// <param name="person">Who forgot theirs.</param>
    /// <param name="by">Who gives it.</param>
    /// <param name="goodFor">From now.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public Task<string> NewPasswordAsync(Person person, string by, TimeSpan goodFor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(person);
        return MakeAsync(person.UserName!, person.Role, person.Id, by, goodFor, $"Gave {person.UserName} a link for a new password", cancellation);
    }

    private async Task<string> MakeAsync(string name, PersonRole role, string? personId, string by, TimeSpan goodFor, string what, CancellationToken cancellation)
    {
        var secret = OneTimeSecret.NewLinkPart();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);

        // The newest link is the one that counts: an older one may have gone astray.
        var older = await db.Invitations.Where(i => i.Name == name && i.PersonId == personId && i.UsedAt == null && i.WithdrawnAt == null).ToListAsync(cancellation);
        older.ForEach(i => i.WithdrawnAt = clock.Now);
        db.Invitations.Add(new Invitation
        {
            Name = name,
            Role = role,
            PersonId = personId,
            SecretHash = OneTimeSecret.Hash(secret),
            InvitedBy = by,
            InvitedAt = clock.Now,
            ExpiresAt = clock.Now + goodFor,
        });
        db.Changes.Add(new ChangeRecord { At = estateTime.GetUtcNow(), By = by, Kind = ChangeKind.Person, What = what });
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return secret;
    }
}
