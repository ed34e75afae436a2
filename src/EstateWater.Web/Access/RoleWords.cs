using EstateWater.Data.Model;

namespace EstateWater.Web.Access;

/// <summary>Roles as people say them.</summary>
public static class RoleWords
{
    /// <summary>For example “irrigator”.</summary>
    public static string Of(PersonRole role) => role.ToString().ToLowerInvariant();

    /// <summary>What the role sees and does, in a few words.</summary>
    public static string Does(PersonRole role) => role switch
    {
        PersonRole.Owner => "looks at everything, changes nothing",
        PersonRole.Manager => "plans the week, keeps the list of people",
        PersonRole.Irrigator => "runs the sets and says what was done",
        PersonRole.Technician => "takes readings in the rows",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "A role of the list."),
    };
}
