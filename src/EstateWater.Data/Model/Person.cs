using Microsoft.AspNetCore.Identity;

namespace EstateWater.Data.Model;

/// <summary>Someone who may sign in. The name they sign in with is the name that stands under what they do.</summary>
public sealed class Person : IdentityUser
{
    /// <summary>Longest name.</summary>
    public const int LongestName = 80;

    /// <summary>What they do on the estate; one each.</summary>
    public required PersonRole Role { get; set; }

    /// <summary>When they set their first password.</summary>
    public required DateTimeOffset JoinedAt { get; init; }

    /// <summary>When a manager locked them out; <see langword="null"/> while they may sign in.</summary>
    public DateTimeOffset? LockedAt { get; set; }

    /// <summary>When they last signed in; <see langword="null"/> before the first time.</summary>
    public DateTimeOffset? LastSignInAt { get; set; }
}

/// <summary>What people do on the estate, and so what they may see and do here.</summary>
public enum PersonRole
{
    /// <summary>Looks at all that was planned, done and learned; changes nothing.</summary>
    Owner,

    /// <summary>Plans the week and keeps the list of people.</summary>
    Manager,

    /// <summary>Runs the sets and says what was done.</summary>
    Irrigator,

    /// <summary>Takes readings in the rows.</summary>
    Technician,
}
