using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

// What stands on the estate is known by its code, in the folder and in the database alike.
internal sealed class StationConfiguration : IEntityTypeConfiguration<Station>
{
    public void Configure(EntityTypeBuilder<Station> station)
    {
        station.ToTable("stations");
        station.HasKey(s => s.Code);
        station.Property(s => s.Code).HasMaxLength(100);
    }
}

internal sealed class WaterSourceConfiguration : IEntityTypeConfiguration<WaterSource>
{
    public void Configure(EntityTypeBuilder<WaterSource> source)
    {
        source.ToTable("water_sources");
        source.HasKey(s => s.Code);
        source.Property(s => s.Code).HasMaxLength(100);
    }
}

internal sealed class ValveConfiguration : IEntityTypeConfiguration<Valve>
{
    public void Configure(EntityTypeBuilder<Valve> valve)
    {
        valve.ToTable("valves");
        valve.HasKey(v => v.Code);
        valve.Property(v => v.Code).HasMaxLength(100);
        valve.HasOne<WaterSource>().WithMany().HasForeignKey(v => v.SourceCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class BlockConfiguration : IEntityTypeConfiguration<Block>
{
    public void Configure(EntityTypeBuilder<Block> block)
    {
        block.ToTable("blocks");
        block.HasKey(b => b.Code);
        block.Property(b => b.Code).HasMaxLength(100);
        block.Property(b => b.Name).HasMaxLength(100);
        block.Property(b => b.Variety).HasMaxLength(100);
        block.Property(b => b.Rootstock).HasMaxLength(100);
        block.HasOne<Station>().WithMany().HasForeignKey(b => b.StationCode).OnDelete(DeleteBehavior.Restrict);
        block.HasOne<Valve>().WithMany().HasForeignKey(b => b.ValveCode).OnDelete(DeleteBehavior.Restrict);
    }
}
