using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;

namespace EstateWater.Simulation.Folder;

/// <summary>Writes what an estate could know at an instant as a folder of open formats.</summary>
public static class FolderWriter
{
    /// <summary>Writes every file; nothing in them is dated after <paramref name="asOf"/> but the days of forecasts issued before it.</summary>
    public static void Write(SimulatedEstate estate, FieldCrew crew, string folder, DateTimeOffset asOf, int members = 20)
    {
        Directory.CreateDirectory(folder);
        EstateFiles.Write(estate.Spec, folder);
        BlockFile.Write(estate.Spec, folder);
        WeatherFiles.Write(estate, folder, asOf, members);
        ObservationFiles.Write(crew, folder, asOf);
        AppliedWaterFile.Write(estate, folder, asOf);
    }
}
