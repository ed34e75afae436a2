namespace EstateWater.Data.Store.Taken;

/// <summary>What a phone says that was taken, checked.</summary>
/// <param name="EntryId">Made on the phone; the same entry sent twice has the same id.</param>
/// <param name="Content">What was taken; null to withdraw what <paramref name="Replaces"/> names.</param>
/// <param name="Replaces">The entry that this one corrects or withdraws; null for a first.</param>
/// <param name="TakenBy">Who says so.</param>
/// <param name="EnteredAt">The phone's clock.</param>
public sealed record TakenMessage(Guid EntryId, TakenContent? Content, Guid? Replaces, string TakenBy, DateTimeOffset EnteredAt);
