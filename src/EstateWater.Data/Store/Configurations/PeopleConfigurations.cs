using EstateWater.Data.Model;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

// The tables of ASP.NET Core Identity, schema version 3, as far as the program uses them: mapped here, because Identity's own
// context takes the version from the services of a running program, and the commands open the database without any.
internal sealed class PersonConfiguration : IEntityTypeConfiguration<Person>
{
    public void Configure(EntityTypeBuilder<Person> person)
    {
        person.ToTable("people");
        person.Property(p => p.UserName).HasMaxLength(Person.LongestName).IsRequired();
        person.Property(p => p.NormalizedUserName).HasMaxLength(Person.LongestName).IsRequired();
        person.HasIndex(p => p.NormalizedUserName).IsUnique();
        person.Property(p => p.Preferences).HasMaxLength(Person.LongestPreferences);
        person.Property(p => p.Language).HasMaxLength(10);
        person.Property(p => p.SecurityStamp).IsRequired();
        person.Property(p => p.ConcurrencyStamp).IsConcurrencyToken();

        // Nobody is asked for an address or a number, so none is kept.
        person.Ignore(p => p.Email).Ignore(p => p.NormalizedEmail).Ignore(p => p.EmailConfirmed);
        person.Ignore(p => p.PhoneNumber).Ignore(p => p.PhoneNumberConfirmed).Ignore(p => p.TwoFactorEnabled);
    }
}

internal sealed class PasskeyConfiguration : IEntityTypeConfiguration<IdentityUserPasskey<string>>
{
    /// <summary>An identifier has at most 1023 bytes (Web Authentication Level 3, section 4, “Credential ID”).</summary>
    private const int LongestCredentialIdBytes = 1023;

    public void Configure(EntityTypeBuilder<IdentityUserPasskey<string>> passkey)
    {
        passkey.ToTable("person_passkeys");
        passkey.HasKey(p => p.CredentialId);
        passkey.Property(p => p.CredentialId).HasMaxLength(LongestCredentialIdBytes);
        passkey.Property(p => p.UserId).IsRequired();
        passkey.OwnsOne(p => p.Data).ToJson("data");
        passkey.HasOne<Person>().WithMany().HasForeignKey(p => p.UserId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class InvitationConfiguration : IEntityTypeConfiguration<Invitation>
{
    public void Configure(EntityTypeBuilder<Invitation> invitation)
    {
        invitation.ToTable("invitations");
        invitation.Property(i => i.Name).HasMaxLength(Person.LongestName);
        invitation.Property(i => i.InvitedBy).HasMaxLength(100);
        invitation.HasIndex(i => i.SecretHash).IsUnique();
        invitation.HasOne<Person>().WithMany().HasForeignKey(i => i.PersonId).OnDelete(DeleteBehavior.Cascade);
    }
}
