using EstateWater.Data.Model;
using EstateWater.Data.Store;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace EstateWater.Web.Access;

/// <summary>Makes people of those who hold a secret: the first manager, and whoever was invited.</summary>
/// <param name="people">Their accounts.</param>
/// <param name="db">The store, the same in which the accounts are kept.</param>
/// <param name="firstStart">The code at the console.</param>
/// <param name="sessions">Hears of new passwords.</param>
/// <param name="clock">Tells whether a secret has run out.</param>
/// <param name="estateTime">The clock of the record of changes.</param>
public sealed class Newcomers(UserManager<Person> people, EstateDb db, FirstStart firstStart, Sessions sessions, SessionClock clock, TimeProvider estateTime)
{
    /// <summary>The code of the mistake: no such secret, or it was used or has run out.</summary>
    public const string SecretRefused = "SecretRefused";

    /// <summary>Whether nobody is here yet.</summary>
    public async Task<bool> IsNobodyHereAsync(CancellationToken cancellation = default) => !await db.People.AnyAsync(cancellation);

    /// <summary>Makes the first manager.</summary>
    /// <param name="code">As typed from the console.</param>
    /// <param name="name">As typed.</param>
    /// <param name="password">As typed.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<(Person? Person, IdentityResult Result)> StartAsync(string code, string name, string password, CancellationToken cancellation = default)
    {
        var person = NewPerson(PersonName.Clean(name), PersonRole.Manager);
        if (!firstStart.Accepts(code))
        {
            return (null, Refused);
        }

        // A mistake in name or password does not use the code up.
        if (await MistakeAsync(person, password) is { } mistake)
        {
            return (null, mistake);
        }

        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (!await IsNobodyHereAsync(cancellation) || !firstStart.TryUse(code))
        {
            return (null, Refused);
        }

        var result = await people.CreateAsync(person, password);
        return result.Succeeded ? await DoneAsync(person, $"{person.UserName} set the program up as its first manager", transaction, cancellation) : (null, result);
    }

    /// <summary>The invitation that a secret opens; null when it opens none now.</summary>
    public async Task<Invitation?> FindAsync(string secret, CancellationToken cancellation = default)
    {
        var hash = OneTimeSecret.Hash(secret);

        // As the store has it, and not as it was when this request first looked: it may have been used since.
        return await db.Invitations.AsNoTracking().SingleOrDefaultAsync(i => i.SecretHash == hash, cancellation) is { } invitation && invitation.IsOpen(clock.Now) ? invitation : null;
    }

    /// <summary>Sets the password for which an invitation was made, of a new person or of one who forgot theirs, and uses the invitation up.</summary>
    /// <param name="secret">From the link.</param>
    /// <param name="password">As typed.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public async Task<(Person? Person, IdentityResult Result)> JoinAsync(string secret, string password, CancellationToken cancellation = default)
    {
        // The transaction takes the write lock at once: of two who use one link at the same time the second finds it used.
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await FindAsync(secret, cancellation) is not { } invitation)
        {
            return (null, Refused);
        }

        var isNew = invitation.PersonId is null;
        var person = isNew ? NewPerson(invitation.Name, invitation.Role) : await people.FindByIdAsync(invitation.PersonId!);

        // Whoever was locked out since is not let in by an older link; one made afterwards, which only the console does, is meant to.
        if (person is null || person.LockedAt >= invitation.InvitedAt)
        {
            return (null, Refused);
        }

        if (await MistakeAsync(person, password) is { } mistake)
        {
            return (null, mistake);
        }

        db.Attach(invitation).Entity.UsedAt = clock.Now;
        var letInAgain = person.LockedAt is null ? "" : " and is let in again";
        var result = isNew ? await people.CreateAsync(person, password) : await RenewAsync(person, password);
        return result.Succeeded
            ? await DoneAsync(person, isNew ? $"{person.UserName} joined as {RoleWords.Of(person.Role)}" : $"{person.UserName} set a new password by link{letInAgain}", transaction, cancellation)
            : (null, result);
    }

    private static IdentityResult Refused => IdentityResult.Failed(new IdentityError { Code = SecretRefused, Description = SecretRefused });

    private async Task<IdentityResult> RenewAsync(Person person, string password)
    {
        person.PasswordHash = people.PasswordHasher.HashPassword(person, password);
        person.AccessFailedCount = 0;
        person.LockoutEnd = null;
        person.LockedAt = null;

        // Whoever knew the old password is signed out.
        return await people.UpdateSecurityStampAsync(person);
    }

    private async Task<(Person? Person, IdentityResult Result)> DoneAsync(
        Person person, string what, Microsoft.EntityFrameworkCore.Storage.IDbContextTransaction transaction, CancellationToken cancellation)
    {
        db.Changes.Add(new ChangeRecord { At = estateTime.GetUtcNow(), By = person.UserName!, Kind = ChangeKind.Person, What = what });
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        sessions.Forget(person.Id);
        return (person, IdentityResult.Success);
    }

    private async Task<IdentityResult?> MistakeAsync(Person person, string password)
    {
        if (!PersonName.IsGood(person.UserName!))
        {
            return IdentityResult.Failed(people.ErrorDescriber.InvalidUserName(person.UserName));
        }

        foreach (var rule in people.PasswordValidators)
        {
            if (await rule.ValidateAsync(people, person, password) is { Succeeded: false } mistake)
            {
                return mistake;
            }
        }

        return null;
    }

    private Person NewPerson(string name, PersonRole role) => new() { UserName = name, Role = role, JoinedAt = clock.Now };
}
