using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Sets;

/// <summary>Proof that an entry is stored.</summary>
/// <param name="EntryId">The entry's id.</param>
/// <param name="SetId">Its set.</param>
/// <param name="ReceivedAt">When it arrived, by the server's clock.</param>
public sealed record ConfirmationReceipt(Guid EntryId, int SetId, DateTimeOffset ReceivedAt)
{
    /// <summary>The receipt of what is stored.</summary>
    public static ConfirmationReceipt Of(SetConfirmation stored) => new(stored.EntryId, stored.SetId, stored.ReceivedAt);
}
