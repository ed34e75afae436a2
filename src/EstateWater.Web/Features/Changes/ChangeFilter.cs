using System.Globalization;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Changes;

/// <summary>Which changes are shown, as it stands in the address.</summary>
/// <param name="By">One person's; null for everyone's.</param>
/// <param name="Kind">One kind; null for all.</param>
/// <param name="Below">Older than the change of this number; null from the newest.</param>
public sealed record ChangeFilter(string? By, ChangeKind? Kind, int? Below)
{
    /// <summary>From the text of an address; what is mangled filters nothing.</summary>
    public static ChangeFilter Parse(string? by, string? kind, string? below) => new(
        string.IsNullOrWhiteSpace(by) ? null : by,
        Enum.GetValues<ChangeKind>().Cast<ChangeKind?>().FirstOrDefault(k => string.Equals(k.ToString(), kind, StringComparison.OrdinalIgnoreCase)),
        int.TryParse(below, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null);

    /// <summary>The address of the same filter further down.</summary>
    public string HrefBelow(int below) =>
        $"/changes?person={Uri.EscapeDataString(By ?? "")}&kind={Kind?.ToString().ToLowerInvariant()}&below={below.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Those that pass.</summary>
    public IQueryable<ChangeRecord> Apply(IQueryable<ChangeRecord> changes) => changes
        .Where(c => (By == null || c.By == By) && (Kind == null || c.Kind == Kind) && (Below == null || c.Id < Below));
}
