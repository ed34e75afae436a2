using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Planning;
using EstateWater.Planning.Accuracy;
using EstateWater.Simulation.Estate;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>Holds <see cref="PlainOutlook"/> against the reading sets of an estate folder, as the command <c>accuracy</c> holds the planner's.</summary>
internal static class PlainAccuracy
{
    public static int Run(string folder, CancellationToken cancellation)
    {
        var reading = EstateFolder.Read(folder);
        var contents = reading.Contents ?? throw new InvalidDataException(string.Join("\n", reading.Defects.Take(5)));
        var full = PlanRequests.From(contents, DateTimeOffset.MaxValue.AddDays(-2));

        // By the local day of the morning; one morning is learnt at a time.
        var known = new Dictionary<DateOnly, PlanRequest>();
        var held = Hindcast.Run(Remembered, full, AccuracyReport.Leads, cancellation: cancellation);
        var plain = known.ToDictionary(morning => morning.Key, morning => Expected(morning.Value, full));
        Console.WriteLine("days ahead, sets, no change (bar), planner, one bucket (ratios to no change)");
        foreach (var lead in AccuracyReport.Leads)
        {
            var pairs = held.Where(h => h.LeadDays == lead)
                .SelectMany(h => plain[h.Date.AddDays(-lead)][(h.Block, h.Measure, lead)].Select(e => (Held: h, Plain: e)))
                .ToList();
            var noChange = pairs.Sum(p => Math.Abs(p.Held.NoChangeBar - p.Held.ReadBar));
            Console.WriteLine(FormattableString.Invariant(
                $"{lead}, {pairs.Count}, {noChange / pairs.Count:0.000}, {pairs.Sum(p => Math.Abs(p.Held.MissBar)) / noChange:0.00}, {pairs.Sum(p => Math.Abs(p.Plain.Band.P50 - p.Held.ReadBar)) / noChange:0.00}"));
        }

        return 0;

        PlanRequest Remembered(DateTimeOffset asOf, int days)
        {
            var then = PastKnowledge.At(contents, asOf, days);
            return known[then.Today] = then;
        }
    }

    // With the water that was then really applied.
    private static ILookup<(string Block, WaterPotentialMeasure Measure, int LeadDays), Expectation> Expected(PlanRequest then, PlanRequest full)
    {
        var measures = then.Blocks.ToDictionary(b => b.Code, PlainOutlook.MeasureOf);
        var ahead = full.Valves.SelectMany(v => v.Applied.Where(a => a.StartedAt > then.AsOf).Select(a => new ValveOpening(v.Code, a.StartedAt, a.Hours))).ToList();
        return PlainOutlook.Of(then, ahead, AccuracyReport.Leads).ToLookup(e => (e.Block, measures[e.Block]!.Value, e.LeadDays));
    }
}
