using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

internal sealed class StageObservationConfiguration : IEntityTypeConfiguration<StageObservation>
{
    public void Configure(EntityTypeBuilder<StageObservation> stage)
    {
        stage.ToTable("stages");
        stage.HasIndex(s => new { s.BlockCode, s.Date }).IsUnique();
        stage.HasOne<Block>().WithMany().HasForeignKey(s => s.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class TargetConfiguration : IEntityTypeConfiguration<Target>
{
    public void Configure(EntityTypeBuilder<Target> target)
    {
        target.ToTable("targets");
        target.HasOne<Block>().WithMany().HasForeignKey(t => t.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ChamberReadingConfiguration : IEntityTypeConfiguration<ChamberReading>
{
    public void Configure(EntityTypeBuilder<ChamberReading> reading)
    {
        reading.ToTable("chamber_readings");
        reading.Property(r => r.Group).HasMaxLength(100);
        reading.Property(r => r.Vine).HasMaxLength(100);
        reading.Property(r => r.Observer).HasMaxLength(100);
        reading.Property(r => r.Note).HasMaxLength(2000);
        reading.HasIndex(r => new { r.BlockCode, r.TakenAt });
        reading.HasOne<Block>().WithMany().HasForeignKey(r => r.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class SoilMoistureConfiguration : IEntityTypeConfiguration<SoilMoisture>
{
    public void Configure(EntityTypeBuilder<SoilMoisture> moisture)
    {
        moisture.ToTable("soil_moistures");
        moisture.Property(m => m.Tube).HasMaxLength(100);
        moisture.HasIndex(m => new { m.BlockCode, m.Date, m.Tube, m.DepthCm }).IsUnique();
        moisture.HasOne<Block>().WithMany().HasForeignKey(m => m.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ProbeCalibrationConfiguration : IEntityTypeConfiguration<ProbeCalibration>
{
    public void Configure(EntityTypeBuilder<ProbeCalibration> calibration)
    {
        calibration.ToTable("probe_calibrations");
        calibration.HasIndex(c => c.BlockCode).IsUnique();
        calibration.HasOne<Block>().WithMany().HasForeignKey(c => c.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class CanopyVisitConfiguration : IEntityTypeConfiguration<CanopyVisit>
{
    public void Configure(EntityTypeBuilder<CanopyVisit> visit)
    {
        visit.ToTable("canopy_visits");
        visit.Property(v => v.Note).HasMaxLength(2000);
        visit.HasIndex(v => new { v.BlockCode, v.Date }).IsUnique();
        visit.HasOne<Block>().WithMany().HasForeignKey(v => v.BlockCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class AppliedWaterConfiguration : IEntityTypeConfiguration<AppliedWater>
{
    public void Configure(EntityTypeBuilder<AppliedWater> water)
    {
        water.ToTable("applied_waters");
        water.Property(w => w.ConfirmedBy).HasMaxLength(100);
        water.Property(w => w.Note).HasMaxLength(2000);
        water.HasIndex(w => new { w.ValveCode, w.StartedAt }).IsUnique();
        water.HasOne<Valve>().WithMany().HasForeignKey(w => w.ValveCode).OnDelete(DeleteBehavior.Restrict);
    }
}
