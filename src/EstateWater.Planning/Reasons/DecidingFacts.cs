using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Reasons;

/// <summary>The two facts that decided about a block: those without which its worst day would be most another.</summary>
/// <remarks>
/// All are weighed in the tension of the worst day ahead: how far it stands from the middle of its band, what drying and
/// heat add, what a neighbour's water takes off, what the water would that is too short or does not fit.
/// </remarks>
internal sealed class DecidingFacts
{
    private readonly BlockOutcome outcome;
    private readonly double[] dry;
    private readonly double[] watered;
    private readonly int worst;

    private DecidingFacts(BlockOutcome outcome)
    {
        this.outcome = outcome;
        dry = [.. outcome.Course.Unwatered.Select(Middle)];
        watered = [.. outcome.Watered.Select(Middle)];
        worst = outcome.WorstDay;
    }

    private DayLimits Limits => outcome.Course.Limits;

    private bool Presses => outcome.Quarters > 0 || outcome.Need.Quarters > 0 || outcome.Need.ForgoneQuarters > 0;

    /// <summary>Two facts, in the order in which to tell them.</summary>
    public static IReadOnlyList<Fact> Of(BlockOutcome outcome)
    {
        var facts = new DecidingFacts(outcome);
        var two = facts.All().OrderByDescending(f => f.WeightMpa).ThenBy(f => f.Kind).Take(2).OrderBy(f => f.Kind).ToList();

        // The ceiling is told once, by the heat where both are told.
        return two.Exists(f => f.Kind == FactKind.Heat)
            ? [.. two.Select(f => f.Kind == FactKind.Drying ? f with { Words = facts.DryingAlone(f.WeightMpa) } : f)]
            : two;
    }

    private IEnumerable<Fact> All()
    {
        var standing = BlockStanding.Words(outcome);
        if (!Presses)
        {
            yield return new Fact(FactKind.Standing, Limits.CeilingMpa[0] - dry[0] + 10, standing);
            yield return new Fact(FactKind.Peak, 1, Peak(Heat()?.Words is { } heat ? Sentence.Of($"{heat} it reaches") : "without water"));
            yield break;
        }

        yield return new Fact(
            FactKind.Standing,
            outcome.Course.State.Sets.Count == 0 ? double.PositiveInfinity : Math.Abs(dry[0] - ((Limits.FloorMpa[0] + Limits.CeilingMpa[0]) / 2)),
            standing);
        foreach (var fact in Ahead().Concat(Others()))
        {
            yield return fact;
        }
    }

    // What the days ahead add on the worst of them: heat, and the rest, which is drying.
    private IEnumerable<Fact> Ahead()
    {
        var heat = Heat();
        if (heat is { } hot)
        {
            yield return new Fact(FactKind.Heat, hot.Mpa, Sentence.Of($"{hot.Words} {Past()}"));
        }

        yield return new Fact(FactKind.Drying, dry[worst] - dry[0] - (heat?.Mpa ?? 0), Sentence.Of($"without water its soil's drying {Past()}"));
    }

    private Sentence DryingAlone(double mpa) => Sentence.Of($"its soil's drying adds {Wording.Tension(mpa)} by {Wording.Day(outcome.Today.AddDays(worst))}");

    private IEnumerable<Fact> Others()
    {
        var need = outcome.Need;
        if (need.ForgoneQuarters > 0)
        {
            yield return new Fact(FactKind.ShortSeason, Spares(need.ForgoneQuarters), Sentence.Of($"water is short this season and its priority is {outcome.Course.State.Block.Priority}"));
        }
        else if (outcome.Course.State.Block.Priority is var priority and not 3)
        {
            yield return new Fact(FactKind.Priority, Math.Abs(priority - 3) / 3.0 * Math.Max(0, dry[worst] - Limits.CeilingMpa[worst]), Sentence.Of($"its priority is {priority}"));
        }

        if (!need.ByHand && need.Quarters - outcome.Quarters is var missing && missing >= NeedSearch.ShortestSetQuarters)
        {
            yield return outcome.IsWaterUsedUp
                ? new Fact(FactKind.ShortSeason, Spares(missing), Sentence.Of($"the season's water ends before {Wording.Hours(missing)} more at its priority of {outcome.Course.State.Block.Priority}"))
                : new Fact(FactKind.NoRoom, Spares(missing), Sentence.Of($"its source has no room for {Wording.Hours(missing)} more"));
        }

        if (Neighbour() is { } neighbour)
        {
            yield return neighbour;
        }
    }

    // A valve opens for all its blocks: one is watered with another, or held back by what another can bear.
    private Fact? Neighbour()
    {
        var others = outcome.Need.Courses.Where(c => c != outcome.Course).ToList();
        var valve = outcome.Need.Valve.Code;
        if (outcome.Quarters > 0 && !outcome.Need.ByHand && outcome.Course.FirstTrouble() is null)
        {
            var dryOnes = Codes(others.Where(c => c.FirstTrouble() is not null));
            return new Fact(FactKind.Neighbour, double.MaxValue, $"it shares valve {valve} with {(dryOnes.Length > 0 ? dryOnes : "another block")}, which needs it");
        }

        var wet = Codes(others.Where(c => c.Limits.FloorCounts[^1] && Middle(c.Unwatered[^1]) < c.Limits.CeilingMpa[^1]));
        var over = watered[worst] - Limits.CeilingMpa[worst];
        return over > 0 && wet.Length > 0 ? new Fact(FactKind.Neighbour, over, $"more would soak {wet} on the same valve") : null;
    }

    // The hottest spell that the worst day lies in: how far that day stands above the line between the days around the spell.
    private (double Mpa, Sentence Words)? Heat()
    {
        var spell = outcome.Heat.Where(h => In(h, worst)).MaxBy(h => h.PeakTMaxC);
        if (spell is null)
        {
            return null;
        }

        var (before, after) = (Ahead(spell.From) - 1, Ahead(spell.To) + 1);
        var line = (before >= 0, after < dry.Length) switch
        {
            (true, true) => dry[before] + ((dry[after] - dry[before]) * (worst - before) / (after - before)),
            (true, false) => dry[before] + (before > 0 ? Math.Max(0, dry[before] - dry[0]) / before * (worst - before) : 0),
            (false, true) => dry[after],
            (false, false) => dry[worst],
        };
        return (Math.Max(0, dry[worst] - line), Sentence.Of($"{Quantity.Temperature(spell.PeakTMaxC)} in the heat from {Wording.Day(spell.From)}"));
    }

    private Sentence Past()
    {
        var over = dry[worst] - Limits.CeilingMpa[worst];
        return over > 0
            ? Sentence.Of($"takes it {Wording.Tension(over)} past its ceiling of {Ceiling} on {Wording.Day(outcome.Today.AddDays(worst))}")
            : Sentence.Of($"takes it to {Wording.Tension(dry[worst])} on {Wording.Day(outcome.Today.AddDays(worst))} (ceiling {Ceiling})");
    }

    private Sentence Peak(Sentence how) => Sentence.Of($"{how} {Wording.Tension(dry[worst])} on {Wording.Day(outcome.Today.AddDays(worst))} (ceiling {Ceiling})");

    private Quantity Ceiling => Wording.BareTension(Limits.CeilingMpa[worst]) with { Trims = true };

    // What so many quarter hours more would take off the worst day, put on the first night that can still reach it.
    private double Spares(int quarters)
    {
        var byDay = outcome.QuartersByDay.ToArray();
        byDay[0] += quarters;
        return Math.Max(0, watered[worst] - Middle(outcome.Course.Watered(byDay)[worst]));
    }

    private bool In(HeatSpell spell, int day) => Ahead(spell.From) <= day && day <= Ahead(spell.To);

    private int Ahead(DateOnly day) => day.DayNumber - outcome.Today.DayNumber;

    private static string Codes(IEnumerable<BlockCourse> courses) => string.Join(" and ", courses.Select(c => c.State.Block.Code));

    private static double Middle(double[] tensions) => Descriptive.Median(tensions);
}
