namespace EstateWater.Data.Model;

/// <summary>A link by which one person sets a password, once: a new person, or one who forgot theirs.</summary>
public sealed class Invitation
{
    public int Id { get; init; }

    /// <summary>The name they will sign in with.</summary>
    public required string Name { get; init; }

    public required PersonRole Role { get; init; }

    /// <summary>Who forgot their password; <see langword="null"/> for a new person.</summary>
    public string? PersonId { get; init; }

    /// <summary>SHA-256 of the secret in the link; the secret itself is nowhere kept. [32 bytes]</summary>
    public required byte[] SecretHash { get; init; }

    public required string InvitedBy { get; init; }

    public required DateTimeOffset InvitedAt { get; init; }

    /// <summary>From then on the link opens nothing.</summary>
    public required DateTimeOffset ExpiresAt { get; init; }

    /// <summary>When the password was set; <see langword="null"/> until then.</summary>
    public DateTimeOffset? UsedAt { get; set; }

    /// <summary>When a manager took the link back; <see langword="null"/> while nobody did.</summary>
    public DateTimeOffset? WithdrawnAt { get; set; }

    /// <summary>Whether the link still opens at a moment.</summary>
    public bool IsOpen(DateTimeOffset now) => UsedAt is null && WithdrawnAt is null && now < ExpiresAt;
}
