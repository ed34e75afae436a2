using System.Text;
using EstateWater.Data.Model;
using Microsoft.EntityFrameworkCore;
using NetTopologySuite.Geometries;

namespace EstateWater.Data.Store;

/// <summary>The estate's database: one estate, what was observed, what was published, what was confirmed, and who may sign in.</summary>
public sealed class EstateDb(DbContextOptions<EstateDb> options) : DbContext(options)
{
    public DbSet<Estate> Estates => Set<Estate>();

    public DbSet<Station> Stations => Set<Station>();

    public DbSet<WaterSource> Sources => Set<WaterSource>();

    public DbSet<Valve> Valves => Set<Valve>();

    public DbSet<Block> Blocks => Set<Block>();

    public DbSet<StageObservation> Stages => Set<StageObservation>();

    public DbSet<Target> Targets => Set<Target>();

    public DbSet<WeatherDay> Weather => Set<WeatherDay>();

    public DbSet<ForecastDay> Forecasts => Set<ForecastDay>();

    public DbSet<ChamberReading> ChamberReadings => Set<ChamberReading>();

    public DbSet<SoilMoisture> SoilMoistures => Set<SoilMoisture>();

    public DbSet<ProbeCalibration> ProbeCalibrations => Set<ProbeCalibration>();

    public DbSet<CanopyVisit> CanopyVisits => Set<CanopyVisit>();

    public DbSet<AppliedWater> AppliedWaters => Set<AppliedWater>();

    public DbSet<PublishedPlan> PublishedPlans => Set<PublishedPlan>();

    public DbSet<PublishedSet> PublishedSets => Set<PublishedSet>();

    public DbSet<SetConfirmation> SetConfirmations => Set<SetConfirmation>();

    public DbSet<SetPhoto> SetPhotos => Set<SetPhoto>();

    public DbSet<TakenEntry> TakenEntries => Set<TakenEntry>();

    public DbSet<PlannedRound> PlannedRounds => Set<PlannedRound>();

    public DbSet<ChangeRecord> Changes => Set<ChangeRecord>();

    public DbSet<Person> People => Set<Person>();

    public DbSet<Invitation> Invitations => Set<Invitation>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        // SQLite cannot order instants kept as text with offsets; ticks of UTC it can.
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicksConverter>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<Geometry>().HaveConversion<OutlineConverter, OutlineComparer>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(EstateDb).Assembly);
        foreach (var property in modelBuilder.Model.GetEntityTypes().Where(entity => !entity.IsMappedToJson()).SelectMany(entity => entity.GetProperties()))
        {
            property.SetColumnName(ColumnName(property.Name, Nullable.GetUnderlyingType(property.ClrType) ?? property.ClrType));
        }
    }

    // Property names end in their unit, and so do the columns: TensionBar is tension_bar.
    private static string ColumnName(string property, Type type)
    {
        var name = new StringBuilder();
        foreach (var letter in property)
        {
            name.Append(char.IsUpper(letter) && name.Length > 0 ? "_" : "").Append(char.ToLowerInvariant(letter));
        }

        return name + (type == typeof(DateTimeOffset) ? "_utc_ticks" : type == typeof(Geometry) ? "_wgs84_wkb" : "");
    }
}
