using EstateWater.Benchmarks;
using EstateWater.Benchmarks.ClosedLoop;

switch (args)
{
    case ["season-balance"]:
        return SeasonBalanceBenchmark.Run();
    case ["closed-loop"]:
        return ClosedLoopCommand.Run(ClosedLoopCommand.HeldBackSeeds);
    case ["closed-loop", "--seeds", var seeds]:
        return ClosedLoopCommand.Run(seeds);
    default:
        Console.WriteLine("no benchmark named; there is: season-balance, closed-loop [--seeds 101-108]");
        return 1;
}
