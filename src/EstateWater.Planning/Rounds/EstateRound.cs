using EstateWater.Agronomy.Sun;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Rounds;

/// <summary>Plans a day's round for an estate: what each reading is worth, fitted into the hours about solar noon.</summary>
public static class EstateRound
{
    // What a reading is worth beside the next decision, for every day since the last: it keeps learning the block. Ours;
    // small, so that it fills the time left with what was read longest ago and never displaces a reading that decides.
    private const double RoutinePerDay = 0.002;
    private const int LongestAgeDays = 21;

    // A set in doubt is read again before others teach anything. Ours: more than any reading is worth.
    private const double AgainWorth = 100;

    // On a sphere of the mean radius; rounds are too short for it to matter. [m/degree]
    private const double MetresPerDegree = 111_195;

    /// <summary>The round.</summary>
    /// <param name="estate">As learned.</param>
    /// <param name="plan">The plan made from it.</param>
    /// <param name="date">Today or a day within the horizon.</param>
    /// <param name="settings">How it is walked.</param>
    /// <param name="added">Blocks that are read in any case.</param>
    /// <param name="dropped">Blocks that are not.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day is not within the horizon.</exception>
    public static RoundPlan Plan(FittedEstate estate, Plan plan, DateOnly date, RoundSettings settings, IReadOnlyCollection<string>? added = null, IReadOnlyCollection<string>? dropped = null)
    {
        ArgumentNullException.ThrowIfNull(estate);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(settings);
        var day = date.DayNumber - estate.Today.DayNumber;
        if (day < 0 || day >= estate.Days - 1)
        {
            throw new ArgumentOutOfRangeException(nameof(date), date, "must be today or a day before the end of the horizon");
        }

        var latitude = estate.Courses.Average(c => c.State.Block.LatitudeDegrees);
        var longitude = estate.Courses.Average(c => c.State.Block.LongitudeDegrees);
        var sun = SolarDay.For(date, latitude, longitude, estate.Request.TimeZone);
        var window = SamplingWindow.Of(sun);
        var looks = estate.Courses.Select(course => Look(estate, plan, course, day, settings, latitude, longitude)).ToList();
        bool IsOpen(BlockLook look) => look.Closed is null && dropped?.Contains(look.Candidate.Block) != true;
        var path = RoundPlanner.Plan(
            [.. looks.Where(IsOpen).Select(l => l.Candidate)],
            (window.To - window.From).TotalMinutes,
            settings.WalkMPerMin / settings.Detour,
            (added ?? []).ToHashSet());
        var byBlock = looks.ToDictionary(l => l.Candidate.Block);
        DateTimeOffset Local(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, estate.Request.TimeZone);
        return new RoundPlan
        {
            Date = date,
            WindowFrom = Local(window.From),
            WindowTo = Local(window.To),
            SolarNoon = Local(sun.Noon),
            Stops = Stops(path, byBlock, Local(window.From), settings),
            Rest = [.. looks
                .Where(l => path.Stops.All(s => s.Block != l.Candidate.Block))
                .OrderByDescending(l => l.Candidate.Worth).ThenBy(l => l.Candidate.Block, StringComparer.Ordinal)
                .Select(l => new RoundRest(l.Candidate.Block, Math.Round(l.Candidate.Worth, 4), l.Closed is { } closed ? RoundReason.Say(closed) : RoundReason.Say(l.Question), l.Closed is null) { Question = l.Question, Closed = l.Closed })],
            Settings = settings,
            Added = [.. added ?? []],
            Dropped = [.. dropped ?? []],
        };
    }

    private static List<RoundStop> Stops(RoundPath path, Dictionary<string, BlockLook> looks, DateTimeOffset from, RoundSettings settings)
    {
        var stops = new List<RoundStop>();
        RoundCandidate? before = null;
        foreach (var stop in path.Stops)
        {
            var look = looks[stop.Block];
            var walkM = before is null ? 0 : settings.Detour * Math.Sqrt(Math.Pow(before.EastM - stop.EastM, 2) + Math.Pow(before.NorthM - stop.NorthM, 2));
            var begins = from.AddMinutes(walkM / settings.WalkMPerMin);
            from = begins.AddMinutes(stop.MinutesThere);
            before = stop;
            stops.Add(new RoundStop
            {
                Block = stop.Block,
                Measure = look.Measure,
                Leaves = look.Leaves.Leaves,
                SpreadBar = Math.Round(look.Leaves.SpreadMpa * Conversions.BarPerMegapascal, 2),
                From = begins,
                To = from,
                WalkM = Math.Round(walkM),
                Worth = Math.Round(stop.Worth, 4),
                Reason = RoundReason.Say(look.Question),
                Question = look.Question,
            });
        }

        return stops;
    }

    private static BlockLook Look(FittedEstate estate, Plan plan, BlockCourse course, int day, RoundSettings settings, double latitude, double longitude)
    {
        var (block, measure) = (course.State.Block, course.Limits.Measure);
        var leaves = UsualLeaves.Of(course.State.Sets, measure, settings.HalfWidthMpa);
        var quarters = PlannedQuarters(estate, plan, course);
        var lastRead = course.State.Sets.LastOrDefault(s => s.Measure == measure)?.Date;
        var age = lastRead is { } last ? Math.Clamp(estate.Today.DayNumber + day - last.DayNumber, 0, LongestAgeDays) : LongestAgeDays;
        var worth = ReadingWorth.Of(course, day, leaves, quarters, LongestHours(estate, course), estate.Seasons.GetValueOrDefault(course.State.Valve.SourceCode)?.PricePerMm ?? 0);
        var question = RoundReason.Of(course, estate.Today, worth, quarters.Sum());
        return new BlockLook(
            new RoundCandidate(
                block.Code,
                (block.LongitudeDegrees - longitude) * Math.Cos(double.DegreesToRadians(latitude)) * MetresPerDegree,
                (block.LatitudeDegrees - latitude) * MetresPerDegree,
                worth + (RoutinePerDay * age) + (question.IsReadAgain ? AgainWorth : 0),
                settings.MinutesPerBlock + (leaves.Leaves * settings.MinutesPerLeaf)),
            measure,
            leaves,
            question,
            Closed(course, measure, lastRead, estate.Today.AddDays(day), day));
    }

    // Why a block cannot be read on the round at all; null when it can.
    private static ClosedToReading? Closed(BlockCourse course, WaterPotentialMeasure measure, DateOnly? lastRead, DateOnly date, int day) =>
        measure == WaterPotentialMeasure.Predawn ? ClosedToReading.Predawn
        : !course.Limits.HasLeaves[day] ? ClosedToReading.NoLeaves
        : lastRead == date ? ClosedToReading.ReadAlready
        : null;

    private static int[] PlannedQuarters(FittedEstate estate, Plan plan, BlockCourse course)
    {
        var quarters = new int[estate.Days];
        foreach (var set in plan.Sets.Where(s => s.Valve == course.State.Valve.Code))
        {
            var day = Math.Max(0, course.State.Valve.WaterDay(set.Start).DayNumber - estate.Today.DayNumber);
            quarters[Math.Min(day, quarters.Length - 1)] += (int)Math.Round(4 * set.Hours);
        }

        return quarters;
    }

    private static double LongestHours(FittedEstate estate, BlockCourse course) =>
        estate.NightsOf(course.State.Valve.SourceCode).Select(n => n.Quarters / 4.0).DefaultIfEmpty(0).Max();

    private sealed record BlockLook(RoundCandidate Candidate, WaterPotentialMeasure Measure, UsualLeaves Leaves, ReadingQuestion Question, ClosedToReading? Closed);
}
