using System.Diagnostics;
using System.Globalization;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Benchmarks;

/// <summary>
/// An estate of many blocks learned and planned from scratch against one season's daily balance of its members, and one new
/// reading set against that.
/// </summary>
internal static class LearningBenchmark
{
    private const double MostTimes = 20, MostReadingShare = 0.01, MostUneven = 0.25;
    private const int Rounds = 3, Readings = 9;

    private static readonly int[] Sizes = [125, 250, 500];

    public static bool Run(string folder, string asOf, CancellationToken cancellation)
    {
        Console.WriteLine($"learning: {Sizes[^1]} blocks from {folder} as of {asOf}");
        var one = WideEstate.Read(folder);
        var instant = DateTimeOffset.Parse(asOf, CultureInfo.InvariantCulture);
        var requests = Sizes.Select(blocks => PlanRequests.From(WideEstate.Of(one, blocks), instant)).ToArray();
        Planner.Plan(requests[0], cancellation); // The first warms.
        var (scalar, scratch) = (new Samples("one season of daily balances, one thread", "s"), Sizes.Select(n => new Samples($"{n} blocks learned and planned", "s")).ToArray());
        for (var round = 0; round < Rounds; round++)
        {
            scalar.Add(SeasonBalanceBenchmark.LoopTime().TotalSeconds);
            for (var i = 0; i < Sizes.Length; i++)
            {
                scratch[i].Add(Seconds(() => Planner.Plan(requests[i], cancellation)));
            }
        }

        Console.WriteLine(scalar);
        scratch.ToList().ForEach(Console.WriteLine);
        var perBlock = Sizes.Zip(scratch, (n, samples) => samples.Median / n).ToArray();
        var even = perBlock.Max(s => Math.Abs((s / perBlock.Average()) - 1));
        var met = Report.AtMost("learned and planned to one season's balances", scratch[^1].Median / scalar.Median, MostTimes, "times");
        met &= Report.AtMost($"time per block of {string.Join(", ", Sizes)} blocks, farthest from their mean", even, MostUneven, "of it");
        return OneReading(requests[^1], scratch[^1].Median, cancellation) && met;
    }

    // A set read the day before, entered block after block.
    private static bool OneReading(PlanRequest request, double scratchSeconds, CancellationToken cancellation)
    {
        var estate = Planner.Fit(request, cancellation);
        Planner.Plan(estate, request, cancellation);
        var (refit, plan) = (new Samples("one reading set learned", "s"), new Samples("all planned anew after it", "s"));
        for (var i = 0; i <= Readings; i++)
        {
            var read = WithSet(request, i * request.Blocks.Count / (Readings + 1));
            FittedEstate? refitted = null;
            var seconds = Seconds(() => refitted = Planner.Refit(estate, read, cancellation));
            if (refitted!.LearnedAsOf != estate.LearnedAsOf || ReferenceEquals(refitted, estate))
            {
                throw new InvalidOperationException("The estate was not brought up to the reading.");
            }

            if (i > 0) // The first warms.
            {
                refit.Add(seconds);
                plan.Add(Seconds(() => Planner.Plan(refitted, read, cancellation)));
            }
        }

        Console.WriteLine(refit);
        Console.WriteLine(plan);
        return Report.AtMost("one reading set to learning and planning all", refit.Median / scratchSeconds, MostReadingShare, "of it");
    }

    private static PlanRequest WithSet(PlanRequest request, int block) => request with
    {
        Blocks = [.. request.Blocks.Select((b, i) => i != block ? b : b with
        {
            Readings = [.. b.Readings, .. Enumerable.Range(0, 6).Select(leaf => new LeafReading(request.AsOf.AddHours(-17).AddMinutes(leaf), WaterPotentialMeasure.Leaf, 13, "G1", $"{leaf}"))],
        })],
    };

    private static double Seconds(Action work)
    {
        var started = Stopwatch.GetTimestamp();
        work();
        var seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"    {seconds:0.00} s")); // It takes minutes: show that it lives.
        return seconds;
    }
}
