using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

internal sealed class TakenEntryConfiguration : IEntityTypeConfiguration<TakenEntry>
{
    public void Configure(EntityTypeBuilder<TakenEntry> entry)
    {
        entry.ToTable("taken_entries");
        entry.Property(e => e.TakenBy).HasMaxLength(100);
        entry.Ignore(e => e.IsWithdrawal);
        entry.HasIndex(e => e.EntryId).IsUnique();

        // An entry is replaced once: what was said of a thing is a chain with one end.
        entry.HasIndex(e => e.Replaces).IsUnique();
        entry.HasIndex(e => e.EnteredAt);
        entry.HasOne<Block>().WithMany().HasForeignKey(e => e.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PlannedRoundConfiguration : IEntityTypeConfiguration<PlannedRound>
{
    public void Configure(EntityTypeBuilder<PlannedRound> round)
    {
        round.ToTable("planned_rounds");
        round.Property(r => r.ChangedBy).HasMaxLength(100);
        round.HasIndex(r => r.Date).IsUnique();
    }
}
