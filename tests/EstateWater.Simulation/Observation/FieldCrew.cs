using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Observation;

/// <summary>Walks the estate once a week and writes down what it sees; keeps all it wrote.</summary>
public sealed class FieldCrew(SimulatedEstate estate)
{
    private const double FirstStageRead = 27;
    private const double LastStageRead = 42;
    private readonly ChamberRound _chamber = new(estate);
    private readonly SoilRound _soil = new(estate);
    private readonly CanopyRound _canopy = new(estate);
    private readonly Dictionary<string, int> _lastStage = [];
    private readonly List<ReadingRow> _readings = [];
    private readonly List<SoilRow> _counts = [];
    private readonly List<CanopyRow> _visits = [];
    private readonly List<StageRow> _stages = [];
    private int _rounds;

    public IReadOnlyList<ReadingRow> Readings => _readings;

    public IReadOnlyList<SoilRow> Counts => _counts;

    public IReadOnlyList<CanopyRow> Visits => _visits;

    public IReadOnlyList<StageRow> Stages => _stages;

    /// <summary>Sets that are not taken by the book, by block and day.</summary>
    public IReadOnlyDictionary<(string Block, DateOnly Day), ReadingCondition> Conditions { get; init; } =
        new Dictionary<(string, DateOnly), ReadingCondition>();

    /// <summary>The week's round, on the day lived last: growth stages always, the rest between fruit set and leaf fall.</summary>
    public void ObserveWeek()
    {
        var day = estate.Today.AddDays(-1);
        var everyOther = _rounds++ % 2 == 0;
        NoteStages(day);
        var inSeason = estate.Spec.Blocks
            .Where(b => b.IsRead && estate.Block(b.Code).Canopy.Stage is >= FirstStageRead - 2 and <= LastStageRead).ToList();
        for (var place = 0; place < inSeason.Count; place++)
        {
            Walk(inSeason[place], day, place, everyOther);
        }
    }

    private void Walk(BlockSpec block, DateOnly day, int place, bool everyOther)
    {
        _readings.AddRange(_chamber.Read(block, day, place, Conditions.GetValueOrDefault((block.Code, day), new ReadingCondition())));
        if (block.HasTube)
        {
            _counts.AddRange(_soil.Count(block, day));
        }

        if (everyOther)
        {
            _visits.Add(_canopy.Visit(block, day));
        }
    }

    private void NoteStages(DateOnly day)
    {
        foreach (var block in estate.Spec.Blocks)
        {
            if (_canopy.Stage(block) is { } stage && _lastStage.GetValueOrDefault(block.Code) != stage)
            {
                _lastStage[block.Code] = stage;
                _stages.Add(new StageRow(block.Code, day, stage));
            }
        }
    }
}
