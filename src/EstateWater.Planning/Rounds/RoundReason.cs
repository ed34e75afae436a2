using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Reasons;

namespace EstateWater.Planning.Rounds;

/// <summary>Why a block is worth a reading, or not.</summary>
internal static class RoundReason
{
    // Below this a reading would hardly change what is done. Ours.
    private const double LeastWorth = 0.01;

    /// <summary>In a sentence.</summary>
    public static Sentence Of(BlockCourse course, DateOnly today, double worth, int plannedQuarters)
    {
        var age = Age(course, today);
        if (worth < LeastWorth)
        {
            return age is null
                ? $"Never read for {MeasureWord(course.Limits.Measure)}: its first set teaches the block itself."
                : $"{age} A reading would hardly change this plan: {(plannedQuarters > 0 ? "its water is right" : "it goes without water")} for all that it may show.";
        }

        var day = MostOpenDay(course);
        var band = TensionBands.OfMpa(course.Unwatered[day]);
        var asks = plannedQuarters > 0 ? Sentence.Of($"whether its {Wording.Hours(plannedQuarters)} are right") : "whether it can go without water";
        return Sentence.Of($"Without water it may stand between {Bar(band.P10) with { IsBare = true }} and {Bar(band.P90)} by {Wording.Day(today.AddDays(day))} (ceiling {Wording.BareTension(course.Limits.CeilingMpa[day])}): a reading tells {asks}. {age ?? $"Never read for {MeasureWord(course.Limits.Measure)}."}");
    }

    private static string? Age(BlockCourse course, DateOnly today)
    {
        var last = course.State.Sets.LastOrDefault(s => s.Measure == course.Limits.Measure);
        return last is null ? null : (today.DayNumber - last.Date.DayNumber) switch
        {
            0 => "Read today.",
            1 => "Read yesterday.",
            var days => $"Read {days} days ago.",
        };
    }

    // The day on which passing the ceiling is nearest to even.
    private static int MostOpenDay(BlockCourse course) => Enumerable.Range(1, course.Unwatered.Length - 1)
        .MinBy(day => Math.Abs(BlockCourse.ChancePast(course.Unwatered[day], course.Limits.CeilingMpa[day]) - 0.5));

    private static Quantity Bar(double bar) => new(QuantityKind.Tension, bar, 1);

    private static string MeasureWord(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => "leaf",
        WaterPotentialMeasure.Stem => "stem",
        _ => "predawn",
    };
}
