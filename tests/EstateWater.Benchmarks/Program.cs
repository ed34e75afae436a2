using EstateWater.Benchmarks;

switch (args)
{
    case ["season-balance"]:
        return SeasonBalanceBenchmark.Run();
    default:
        Console.WriteLine("no benchmark named; there is: season-balance");
        return 1;
}
