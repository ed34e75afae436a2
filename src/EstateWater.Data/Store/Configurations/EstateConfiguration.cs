using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

internal sealed class EstateConfiguration : IEntityTypeConfiguration<Estate>
{
    public void Configure(EntityTypeBuilder<Estate> estate)
    {
        estate.ToTable("estate", table => table.HasCheckConstraint("one_estate", "id = 1"));
        estate.Property(e => e.Id).ValueGeneratedNever();
        estate.Property(e => e.Name).HasMaxLength(100);
        estate.Property(e => e.TimeZone).HasMaxLength(100);
        estate.Property(e => e.Country).HasMaxLength(100);
    }
}
