using EstateWater.Data.Folder;

namespace EstateWater.Tests.Data;

/// <summary>The smallest estate folder that uses every file, to be spoiled one place at a time.</summary>
internal sealed class SmallEstate : IDisposable
{
    private static readonly (string Name, string Text)[] Files =
    [
        ("estate.json", """
            {
              "name": "Small estate",
              "time_zone": "Africa/Johannesburg",
              "country": "South Africa",
              "display_units": "us"
            }
            """),
        ("stations.csv", """
            station,latitude,longitude,elevation_m,wind_height_m
            hill,-33.9,19,140,2
            """),
        ("water-sources.csv", """
            source,max_flow_m3_per_h,daily_from,daily_to,season_allocation_m3,water_ec_ds_per_m
            dam,60,20:00,06:30,90000,0.4
            """),
        ("valves.csv", """
            valve,source
            V1,dam
            V2,dam
            """),
        ("blocks.geojson", """
            {"type": "FeatureCollection", "features": [
            {"type": "Feature", "geometry": {"type": "Polygon", "coordinates": [[[19.001, -33.9], [19.003, -33.9], [19.003, -33.899], [19.001, -33.9]]]},
             "properties": {"block": "B1", "fruit": "red", "station": "hill", "valve": "V1", "row_spacing_m": 2.4, "vine_spacing_m": 1.5,
             "emitters_per_vine": 2, "emitter_flow_l_per_h": 2.3, "emission_uniformity": 0.9, "root_depth_m": 1.2, "available_water_mm_per_m": 140,
             "wetted_fraction": 0.4, "shaded_fraction": 0.3, "planted_year": 2004, "priority": 5}},
            {"type": "Feature", "geometry": {"type": "MultiPolygon", "coordinates": [[[[19.01, -33.9], [19.01, -33.898], [19.013, -33.898], [19.01, -33.9]]]]},
             "properties": {"block": "B2", "fruit": "white", "station": "hill", "valve": "V2", "row_spacing_m": 2, "vine_spacing_m": 1,
             "emitters_per_vine": 1, "emitter_flow_l_per_h": 2, "root_depth_m": 1, "available_water_mm_per_m": 120, "name": null}}
            ]}
            """),
        ("stages.csv", """
            block,date,el_stage
            B1,2024-11-11,23
            B1,2024-12-20,31
            """),
        ("targets.csv", """
            block,fruit,from_el_stage,to_el_stage,measure,floor_bar,ceiling_bar
            ,red,4,35,leaf,5,12
            B2,,4,27,stem,2,7
            B2,,27,35,stem,7,10.5
            """),
        ("weather-daily.csv", """
            station,date,t_max_c,t_min_c,rh_max_pct,rh_min_pct,wind_m_per_s,solar_mj_per_m2,rain_mm
            hill,2024-11-10,28.4,14.2,91,37,2.1,24.6,0
            hill,2024-11-11,30.1,15,,,,,
            """),
        ("forecast-daily.csv", """
            station,issued_at,date,member,t_max_c,t_min_c,rain_mm
            hill,2024-11-11T05:00:00+02:00,2024-11-12,,31,16,0
            hill,2024-11-11T05:00:00+02:00,2024-11-12,m1,33,17,0
            """),
        ("chamber-readings.csv", """
            block,taken_at,measure,group,vine,tension_bar,exposure,bagged_min,delay_s,observer,note
            B1,2024-11-11T13:05:00+02:00,leaf,G1,1,9.25,sun,0,26,,
            B1,2024-11-11T13:06:00+02:00,leaf,G1,2,9.5,sun,0,30,,
            B1,2024-11-11T13:07:00+02:00,leaf,G1,,9,,,,,
            B1,2024-11-11T13:07:00+02:00,leaf,G1,,9,,,,,
            B2,2024-11-11T05:10:00+02:00,predawn,,1,2.5,,,,,
            """),
        ("soil-moisture.csv", """
            block,date,tube,depth_cm,vwc_m3_per_m3,count,standard_count
            B1,2024-11-11,T1,20,,4354,12000
            B2,2024-11-11,T1,20,0.21,,
            """),
        ("probe-calibration.csv", """
            block,intercept,slope
            ,-0.012,0.62
            B1,0,0.6
            """),
        ("canopy.csv", """
            block,date,shoot_length_cm,shaded_fraction,growing_tips_pct,visual_stress,note
            B1,2024-11-11,96,0.2,80,0,
            """),
        ("applied-water.csv", """
            valve,started_at,hours,meter_m3,confirmed_by,note
            V1,2024-11-10T20:00:00+02:00,5,146.3,,
            V1,2024-11-12T20:00:00+02:00,2.5,,,
            """),
    ];

    private readonly TemporaryFolder folder = new();

    public SmallEstate()
    {
        foreach (var (name, text) in Files)
        {
            Put(name, text + "\n");
        }
    }

    public string Path => folder.Path;

    public static IEnumerable<string> FileNames => Files.Select(f => f.Name);

    public string Text(string file) => File.ReadAllText(folder.File(file));

    public void Put(string file, string text) => File.WriteAllText(folder.File(file), text);

    public void Put(string file, byte[] bytes) => File.WriteAllBytes(folder.File(file), bytes);

    public void Remove(string file) => File.Delete(folder.File(file));

    /// <summary>Changes one place of one file, which must be there.</summary>
    public void Change(string file, string from, string to)
    {
        var text = Text(file);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file} holds no '{from}'");
        Put(file, text[..at] + to + text[(at + from.Length)..]);
    }

    public EstateFolderReading Read() => EstateFolder.Read(folder.Path);

    public void Dispose() => folder.Dispose();
}
