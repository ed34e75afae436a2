using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace EstateWater.Data.Store.Configurations;

internal sealed class WeatherDayConfiguration : IEntityTypeConfiguration<WeatherDay>
{
    public void Configure(EntityTypeBuilder<WeatherDay> day)
    {
        day.ToTable("weather_days");
        day.HasIndex(d => new { d.StationCode, d.Date }).IsUnique();
        day.HasOne<Station>().WithMany().HasForeignKey(d => d.StationCode).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ForecastDayConfiguration : IEntityTypeConfiguration<ForecastDay>
{
    public void Configure(EntityTypeBuilder<ForecastDay> day)
    {
        day.ToTable("forecast_days");
        day.Property(d => d.Member).HasMaxLength(100);
        day.HasIndex(d => new { d.StationCode, d.IssuedAt, d.Member, d.Date }).IsUnique();
        day.HasOne<Station>().WithMany().HasForeignKey(d => d.StationCode).OnDelete(DeleteBehavior.Restrict);
    }
}
