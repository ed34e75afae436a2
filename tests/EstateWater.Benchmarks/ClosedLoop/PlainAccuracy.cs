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
        var held = Hindcast.Run((asOf, days) => PastKnowledge.At(contents, asOf, days), full, AccuracyReport.Leads, cancellation: cancellation);
        var plain = new Dictionary<DateTimeOffset, ILookup<(string Block, int LeadDays), Expectation>>();
        var measures = new Dictionary<DateTimeOffset, Dictionary<string, WaterPotentialMeasure?>>();
        Console.WriteLine("days ahead, sets, no change (bar), planner, one bucket (ratios to no change)");
        foreach (var lead in AccuracyReport.Leads)
        {
            var pairs = held.Where(h => h.LeadDays == lead).Select(h => (Held: h, Plain: Expected(h))).Where(p => p.Plain is not null).ToList();
            var noChange = pairs.Sum(p => Math.Abs(p.Held.NoChangeBar - p.Held.ReadBar));
            Console.WriteLine(FormattableString.Invariant(
                $"{lead}, {pairs.Count}, {noChange / pairs.Count:0.000}, {pairs.Sum(p => Math.Abs(p.Held.MissBar)) / noChange:0.00}, {pairs.Sum(p => Math.Abs(p.Plain!.Band.P50 - p.Held.ReadBar)) / noChange:0.00}"));
        }

        return 0;

        // Null where the block was last read in another measure.
        Expectation? Expected(HeldAgainst set)
        {
            var morning = set.Date.AddDays(-set.LeadDays).ToDateTime(new TimeOnly(6, 0));
            var asOf = new DateTimeOffset(morning, full.TimeZone.GetUtcOffset(morning));
            if (!plain.TryGetValue(asOf, out var then))
            {
                var known = PastKnowledge.At(contents, asOf, AccuracyReport.Leads.Max());
                var ahead = full.Valves.SelectMany(v => v.Applied.Where(a => a.StartedAt > asOf).Select(a => new ValveOpening(v.Code, a.StartedAt, a.Hours))).ToList();
                measures[asOf] = known.Blocks.ToDictionary(b => b.Code, PlainOutlook.MeasureOf);
                then = plain[asOf] = PlainOutlook.Of(known, ahead, AccuracyReport.Leads).ToLookup(e => (e.Block, e.LeadDays));
            }

            return measures[asOf].GetValueOrDefault(set.Block) == set.Measure ? then[(set.Block, set.LeadDays)].FirstOrDefault() : null;
        }
    }
}
