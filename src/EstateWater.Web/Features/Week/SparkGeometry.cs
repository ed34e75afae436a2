using System.Globalization;
using System.Text;
using EstateWater.Planning;

namespace EstateWater.Web.Features.Week;

/// <summary>Where a block's outlook is drawn: days to the right, tension upward, on the tension scale that the whole table shares.</summary>
/// <param name="LowBar">Tension at the lower edge. [bar]</param>
/// <param name="HighBar">Tension at the upper edge. [bar]</param>
public sealed record SparkGeometry(double LowBar, double HighBar)
{
    /// <summary>Width of the picture.</summary>
    public const double Width = 132;

    /// <summary>Height of the picture.</summary>
    public const double Height = 48;

    /// <summary>The scale that holds all these blocks' outlooks, floors and ceilings.</summary>
    public static SparkGeometry For(IEnumerable<BlockPlan> blocks)
    {
        var tensions = blocks
            .SelectMany(b => b.Outlook
                .SelectMany(d => new[] { d.UnwateredBar.P10, d.UnwateredBar.P90, d.PlannedBar.P10, d.PlannedBar.P90 })
                .Append(b.FloorBar)
                .Append(b.CeilingBar))
            .DefaultIfEmpty(0)
            .ToList();
        var (low, high) = (tensions.Min(), tensions.Max());
        return new SparkGeometry(low, high > low ? high : low + 1);
    }

    /// <summary>Height of a tension in the picture, downward from its upper edge.</summary>
    public double Y(double bar) => Math.Round((HighBar - bar) / (HighBar - LowBar) * Height, 1);

    /// <summary>A line through one tension a day.</summary>
    public string Line(IReadOnlyList<OutlookDay> days, Func<OutlookDay, double> bar) =>
        Points(days.Select((day, i) => (X(i, days.Count), Y(bar(day)))));

    /// <summary>The area between p10 and p90.</summary>
    public string Fan(IReadOnlyList<OutlookDay> days, Func<OutlookDay, TensionBand> band) => Points(
        days.Select((day, i) => (X(i, days.Count), Y(band(day).P90)))
            .Concat(days.Select((day, i) => (X(i, days.Count), Y(band(day).P10))).Reverse()));

    private static double X(int day, int days) => days < 2 ? Width / 2 : Math.Round(day * Width / (days - 1), 1);

    private static string Points(IEnumerable<(double X, double Y)> points)
    {
        var text = new StringBuilder();
        foreach (var (x, y) in points)
        {
            text.Append(CultureInfo.InvariantCulture, $"{(text.Length > 0 ? " " : "")}{x},{y}");
        }

        return text.ToString();
    }
}
