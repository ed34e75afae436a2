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

        // A set is confirmed once, whoever does it.
        set.HasOne(s => s.Confirmation).WithOne().HasForeignKey<SetConfirmation>(c => c.SetId).OnDelete(DeleteBehavior.Restrict);
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
        confirmation.HasOne<AppliedWater>().WithMany().HasForeignKey(c => c.AppliedWaterId).OnDelete(DeleteBehavior.Restrict);
    }
}
