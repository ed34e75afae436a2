using System.Globalization;

namespace EstateWater.Benchmarks;

/// <summary>Says what was found against what was wanted.</summary>
internal static class Report
{
    /// <summary>Prints a value beside the most it may be; gives whether it is met.</summary>
    public static bool AtMost(string what, double value, double most, string unit)
    {
        var met = value <= most;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {value:0.###} {unit} (target: at most {most:0.###} {unit}) {(met ? "met" : "MISSED")}"));
        return met;
    }

    /// <summary>Prints a value that has no target.</summary>
    public static void Note(string what, double value, string unit) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  for information, {what}: {value:0.###} {unit}"));
}
