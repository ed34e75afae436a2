using Microsoft.AspNetCore.Identity;

namespace EstateWater.Data.Model;

/// <summary>Someone who may sign in. The name they sign in with is the name that stands under what they do.</summary>
public sealed class Person : IdentityUser
{
    /// <summary>Longest name.</summary>
    public const int LongestName = 80;

    /// <summary>Longest word of what they prefer.</summary>
    public const int LongestPreferences = 100;

    /// <summary>What they do on the estate; one each.</summary>
    public required PersonRole Role { get; set; }

    /// <summary>When they set their first password.</summary>
    public required DateTimeOffset JoinedAt { get; init; }

    /// <summary>When a manager locked them out; <see langword="null"/> while they may sign in.</summary>
    public DateTimeOffset? LockedAt { get; set; }

    /// <summary>When they last signed in; <see langword="null"/> before the first time.</summary>
    public DateTimeOffset? LastSignInAt { get; set; }

    /// <summary>Units, numbers and look that they chose, as one word of the pages' own; <see langword="null"/> until they choose.</summary>
    public string? Preferences { get; set; }

    /// <summary>Tag of the language that they chose for pages that have several; <see langword="null"/> until they choose.</summary>
    public string? Language { get; set; }
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
