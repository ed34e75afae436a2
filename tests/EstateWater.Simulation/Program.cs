using EstateWater.Simulation.Demo;

if (args is not ["seed", var folder])
{
    Console.Error.WriteLine("usage: simulation seed FOLDER");
    return 2;
}

DemoSeasons.Write(folder);
Console.WriteLine($"The demo estate is in {Path.GetFullPath(folder)}.");
return 0;
