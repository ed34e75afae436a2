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

    /// <summary>The facts.</summary>
    public static ReadingQuestion Of(BlockCourse course, DateOnly today, double worth, int plannedQuarters)
    {
        var measure = course.Limits.Measure;
        var last = course.State.Sets.LastOrDefault(s => s.Measure == measure);
        return new ReadingQuestion(
            measure, today.DayNumber - last?.Date.DayNumber, plannedQuarters / 4.0, worth < LeastWorth ? null : MostOpen(course, today))
        {
            IsReadAgain = LastSetDoubt.Of(course.State.Sets) is not null,
        };
    }

    /// <summary>In a sentence.</summary>
    public static Sentence Say(ReadingQuestion question)
    {
        var age = question.DaysSinceRead switch
        {
            null => null,
            0 => "Read today.",
            1 => "Read yesterday.",
            var days => $"Read {days} days ago.",
        };
        if (question.IsReadAgain)
        {
            return $"{age} Its last set is in doubt: read it again before it is believed.".TrimStart();
        }

        if (question.Open is not { } open)
        {
            return age is null
                ? $"Never read for {MeasureWord(question.Measure)}: its first set teaches the block itself."
                : $"{age} A reading would hardly change this plan: {(question.PlannedHours > 0 ? "its water is right" : "it goes without water")} for all that it may show.";
        }

        var asks = question.PlannedHours > 0 ? Sentence.Of($"whether its {question.PlannedHours:0.##} h are right") : "whether it can go without water";
        return Sentence.Of($"Without water it may stand between {Bar(open.P10Bar) with { IsBare = true }} and {Bar(open.P90Bar)} by {Wording.Day(open.Day)} (ceiling {Bar(open.CeilingBar) with { IsBare = true }}): a reading tells {asks}. {age ?? $"Never read for {MeasureWord(question.Measure)}."}");
    }

    /// <summary>Why it cannot be read at all.</summary>
    public static Sentence Say(ClosedToReading closed) => closed switch
    {
        ClosedToReading.Predawn => "Its target is predawn: read it before sunrise, not on this round.",
        ClosedToReading.NoLeaves => "It has no leaves to read.",
        _ => "Read on this day already.",
    };

    private static OpenTension MostOpen(BlockCourse course, DateOnly today)
    {
        var day = Enumerable.Range(1, course.Unwatered.Length - 1)
            .MinBy(day => Math.Abs(BlockCourse.ChancePast(course.Unwatered[day], course.Limits.CeilingMpa[day]) - 0.5));
        var band = TensionBands.OfMpa(course.Unwatered[day]);
        return new OpenTension(today.AddDays(day), band.P10, band.P90, course.Limits.CeilingMpa[day] * Conversions.BarPerMegapascal);
    }

    private static Quantity Bar(double bar) => new(QuantityKind.Tension, bar, 1);

    private static string MeasureWord(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => "leaf",
        WaterPotentialMeasure.Stem => "stem",
        _ => "predawn",
    };
}
