using EstateWater.Data.Folder;
using EstateWater.Planning;
using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Folder;
using EstateWater.Simulation.Observation;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>What a plan expected of a block on a day.</summary>
internal sealed record Expectation(string Block, DateOnly Date, int LeadDays, TensionBand Band, double? LastReadBar);

/// <summary>The program itself: reads the folder as of Tuesday morning and plans; its sets of the coming week are run as they are.</summary>
/// <param name="isHeldBesidePlain">Whether the plain reference looks ahead on the same mornings.</param>
internal sealed class PlannerDecider(bool isHeldBesidePlain = false) : IDecider
{
    public static readonly int[] Leads = [0, 1, 3, 7];
    private readonly List<Expectation> _expectations = [];
    private readonly List<Expectation> _plain = [];

    public string Name => "planner";

    public IReadOnlyList<Expectation> Expectations => _expectations;

    /// <summary>What <see cref="PlainOutlook"/> expected on the same mornings.</summary>
    public IReadOnlyList<Expectation> Plain => _plain;

    public IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew)
    {
        var asOf = estate.Spec.Site.At(estate.Today, 6);
        var request = PlanRequests.From(Known(estate, crew, asOf), asOf);
        var plan = Planner.Plan(request);
        if (isHeldBesidePlain)
        {
            _plain.AddRange(PlainOutlook.Of(request, Openings(plan.Sets), Leads));
        }

        foreach (var block in plan.Blocks)
        {
            _expectations.AddRange(Leads.Select(lead => new Expectation(
                block.Block, estate.Today.AddDays(lead), lead, block.Outlook[lead].PlannedBar, block.Latest is { } latest && latest.TakenAt > asOf.AddDays(-8) ? latest.MeanBar : null)));
        }

        return Openings(plan.Sets.Where(s => s.Start < asOf.AddDays(7)));
    }

    private static IReadOnlyList<ValveOpening> Openings(IEnumerable<PlannedSet> sets) => [.. sets.Select(s => new ValveOpening(s.Valve, s.Start, s.Hours))];

    /// <summary>Through files and back, as an estate's own data would come.</summary>
    private static Data.Model.EstateContents Known(SimulatedEstate estate, FieldCrew crew, DateTimeOffset asOf)
    {
        var folder = Directory.CreateTempSubdirectory("estate-water-loop-");
        try
        {
            FolderWriter.Write(estate, crew, folder.FullName, asOf);
            var reading = EstateFolder.Read(folder.FullName);
            return reading.Contents ?? throw new InvalidDataException(string.Join("\n", reading.Defects.Take(5)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
