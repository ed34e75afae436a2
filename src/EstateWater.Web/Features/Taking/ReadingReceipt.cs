using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Taking;

/// <summary>Proof that an entry is stored.</summary>
/// <param name="EntryId">The entry's id.</param>
/// <param name="Block">Its block.</param>
/// <param name="Observations">How many rows of the estate's tables it stands for; 0 for a withdrawal.</param>
/// <param name="ReceivedAt">When it arrived, by the server's clock.</param>
public sealed record ReadingReceipt(Guid EntryId, string Block, int Observations, DateTimeOffset ReceivedAt)
{
    /// <summary>The receipt of what is stored.</summary>
    public static ReadingReceipt Of(TakenEntry stored) => new(stored.EntryId, stored.BlockCode, stored.RowIds.Length, stored.ReceivedAt);
}
