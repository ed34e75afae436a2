using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

internal sealed class PublishedPlanConfiguration : IEntityTypeConfiguration<PublishedPlan>
{
    public void Configure(EntityTypeBuilder<PublishedPlan> plan)
    {
        plan.ToTable("published_plans");
        plan.Property(p => p.PublishedBy).HasMaxLength(100);
        plan.Property(p => p.Note).HasMaxLength(2000);
        plan.Property(p => p.WithdrawnBy).HasMaxLength(100);
        plan.HasIndex(p => p.PublishedAt);
        plan.HasMany(p => p.Sets).WithOne().HasForeignKey(s => s.PlanId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class PublishedSetConfiguration : IEntityTypeConfiguration<PublishedSet>
{
    public void Configure(EntityTypeBuilder<PublishedSet> set)
    {
        set.ToTable("published_sets");
        set.Property(s => s.SourceCode).HasMaxLength(100);
        set.HasIndex(s => s.Start);
        set.HasOne<Valve>().WithMany().HasForeignKey(s => s.ValveCode).OnDelete(DeleteBehavior.Restrict);
        set.Ignore(s => s.Confirmation);
        set.HasMany(s => s.Confirmations).WithOne().HasForeignKey(c => c.SetId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class SetConfirmationConfiguration : IEntityTypeConfiguration<SetConfirmation>
{
    public void Configure(EntityTypeBuilder<SetConfirmation> confirmation)
    {
        confirmation.ToTable("set_confirmations");
        confirmation.Property(c => c.ConfirmedBy).HasMaxLength(100);
        confirmation.Property(c => c.Note).HasMaxLength(2000);
        confirmation.HasIndex(c => c.EntryId).IsUnique();

        // A set is confirmed once, whoever does it, and an entry is corrected once: what was said of a set is a chain with one end.
        confirmation.HasIndex(c => c.SetId).IsUnique().HasFilter("replaces IS NULL");
        confirmation.HasIndex(c => c.Replaces).IsUnique();
        confirmation.HasOne<AppliedWater>().WithMany().HasForeignKey(c => c.AppliedWaterId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class SetPhotoConfiguration : IEntityTypeConfiguration<SetPhoto>
{
    public void Configure(EntityTypeBuilder<SetPhoto> photo)
    {
        photo.ToTable("set_photos");
        photo.HasIndex(p => p.ConfirmationId).IsUnique();
        photo.HasOne<SetConfirmation>().WithMany().HasForeignKey(p => p.ConfirmationId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ChangeRecordConfiguration : IEntityTypeConfiguration<ChangeRecord>
{
    public void Configure(EntityTypeBuilder<ChangeRecord> change)
    {
        change.ToTable("changes");
        change.Property(c => c.By).HasMaxLength(100);
        change.Property(c => c.What).HasMaxLength(ChangeRecord.LongestText);
        change.Property(c => c.Before).HasMaxLength(ChangeRecord.LongestText);
        change.HasIndex(c => c.At);
    }
}
