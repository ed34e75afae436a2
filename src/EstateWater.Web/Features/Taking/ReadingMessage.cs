using System.Globalization;
using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Data.Store.Taken;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Taking;

/// <summary>What the phone sends of something taken in the rows. Everything may be missing or wrong until <see cref="Mistakes"/> is empty.</summary>
public sealed record ReadingMessage
{
    /// <summary>More leaves than so many are no set.</summary>
    public const int MostLeaves = 100;

    private const int MostDepths = 50;
    private const int LongestName = 80;
    private const int LongestNote = 200;

    /// <summary>Made on the phone; the same entry sent twice has the same.</summary>
    public Guid? EntryId { get; init; }

    /// <summary>chamber, soil, canopy or stage; withdrawal for taking back what <see cref="Replaces"/> names.</summary>
    public string? Kind { get; init; }

    /// <summary>The block's code.</summary>
    public string? Block { get; init; }

    /// <summary>When it was taken; of leaves, each says when.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>leaf, stem or predawn.</summary>
    public string? Measure { get; init; }

    /// <summary>Leaves in the order in which they were read.</summary>
    public IReadOnlyList<LeafMessage>? Leaves { get; init; }

    /// <summary>The soil tube.</summary>
    public string? Tube { get; init; }

    /// <summary>Standard count of the session.</summary>
    public double? StandardCount { get; init; }

    /// <summary>Depths of the tube.</summary>
    public IReadOnlyList<DepthMessage>? Depths { get; init; }

    /// <summary>[cm]</summary>
    public double? ShootLengthCm { get; init; }

    /// <summary>Share of the ground shaded at solar noon, 0–1.</summary>
    public double? ShadedFraction { get; init; }

    /// <summary>Shoots whose tips still grow. [%]</summary>
    public double? GrowingTipsPct { get; init; }

    /// <summary>0 none to 3 leaves yellowing or lost.</summary>
    public int? VisualStress { get; init; }

    /// <summary>Modified Eichhorn–Lorenz number, 1–47.</summary>
    public double? ElStage { get; init; }

    /// <summary>The entry that this one corrects or withdraws; null for a first.</summary>
    public Guid? Replaces { get; init; }

    /// <summary>Who took it.</summary>
    public string? TakenBy { get; init; }

    /// <summary>A remark.</summary>
    public string? Note { get; init; }

    /// <summary>The phone's clock when it was entered.</summary>
    public DateTimeOffset? EnteredAt { get; init; }

    private bool IsWithdrawal => Kind == "withdrawal";

    private TakenKind? KindTaken => Word<TakenKind>(Kind);

    /// <summary>What is wrong, by field, all at once; empty when nothing is.</summary>
    /// <param name="units">In which the sender is told the rules.</param>
    public Dictionary<string, string[]> Mistakes(UnitChoice units) => Always().Concat(KindTaken switch
    {
        TakenKind.Chamber => OfLeaves(units),
        TakenKind.Soil => OfSoil(units),
        TakenKind.Canopy => OfCanopy(units),
        TakenKind.Stage => [("elStage", ElStage is not (>= GrowthStages.First and <= GrowthStages.Last), "A growth stage is a number from 1 to 47, like 27.")],
        _ => [],
    })
        .Where(check => check.Wrong)
        .GroupBy(check => check.Field)
        .ToDictionary(checks => checks.Key, checks => checks.Select(c => c.Rule).Distinct().ToArray());

    /// <summary>The entry to store, of a message without mistakes.</summary>
    public TakenMessage ToEntry() => new(EntryId!.Value, IsWithdrawal ? null : Content(), Replaces, TakenBy!.Trim(), EnteredAt!.Value);

    private TakenContent Content() => new()
    {
        Kind = KindTaken!.Value,
        BlockCode = Block!.Trim(),
        TakenAt = KindTaken == TakenKind.Chamber ? Leaves!.Min(l => l.TakenAt!.Value) : TakenAt!.Value,
        Leaves = KindTaken == TakenKind.Chamber ? new LeafSet(Word<WaterPotentialMeasure>(Measure)!.Value, [.. Leaves!.Select(l => l.ToLeaf())]) : null,
        Soil = KindTaken == TakenKind.Soil ? new TubeProfile(Tube!.Trim(), StandardCount, [.. Depths!.Select(d => new TubeDepth(d.DepthCm!.Value, d.VwcM3PerM3, d.Count)).OrderBy(d => d.DepthCm)]) : null,
        Canopy = KindTaken == TakenKind.Canopy ? new CanopyFacts(ShootLengthCm, ShadedFraction, GrowingTipsPct, VisualStress) : null,
        ElStage = KindTaken == TakenKind.Stage ? ElStage : null,
        Note = string.IsNullOrWhiteSpace(Note) ? null : Note.Trim(),
    };

    private IEnumerable<(string Field, bool Wrong, string Rule)> Always() =>
    [
        ("entryId", EntryId is null || EntryId == Guid.Empty, "An entry needs its id, a UUID made on the phone."),
        ("kind", !IsWithdrawal && KindTaken is null, "An entry is a chamber set, a soil tube, a canopy visit or a growth stage."),
        ("replaces", IsWithdrawal && Replaces is null, "A withdrawal names the entry that it withdraws."),
        ("block", !IsWithdrawal && string.IsNullOrWhiteSpace(Block), "An entry names its block."),
        ("takenAt", KindTaken is not null and not TakenKind.Chamber && TakenAt is null, "An entry says when it was taken, like 2025-01-22T12:30:00+02:00."),
        ("takenBy", string.IsNullOrWhiteSpace(TakenBy) || TakenBy.Length > LongestName, $"Say who took it, in at most {LongestName} letters."),
        ("note", Note?.Length > LongestNote, $"A note has at most {LongestNote} letters."),
        ("enteredAt", EnteredAt is null, "An entry says when it was made, like 2025-01-22T12:30:00+02:00."),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfLeaves(UnitChoice units) =>
    [
        ("measure", Word<WaterPotentialMeasure>(Measure) is null, "The measure is leaf, stem or predawn."),
        ("leaves", Leaves is not { Count: >= 1 and <= MostLeaves } || Leaves.Any(l => l is null), $"A set has 1 to {MostLeaves} leaves."),
        .. (Leaves ?? []).OfType<LeafMessage>().SelectMany((leaf, i) => leaf.Checks(i, units)),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfSoil(UnitChoice units) =>
    [
        ("tube", string.IsNullOrWhiteSpace(Tube) || Tube.Length > LongestName, "Name the tube, like T1."),
        ("depths", Depths is not { Count: >= 1 and <= MostDepths } || Depths.Any(d => d is null), $"A tube has 1 to {MostDepths} depths."),
        ("depths", Depths is not null && Depths.OfType<DepthMessage>().GroupBy(d => d.DepthCm).Any(d => d.Count() > 1), "Each depth is entered once."),
        ("standardCount", Depths is not null && Depths.OfType<DepthMessage>().Any(d => d.Count is not null) && !(StandardCount > 0 && double.IsFinite(StandardCount.Value)), "Counts need the standard count of the session, like 12000."),
        .. (Depths ?? []).OfType<DepthMessage>().SelectMany((depth, i) => depth.Checks(i, units)),
    ];

    private IEnumerable<(string Field, bool Wrong, string Rule)> OfCanopy(UnitChoice units) =>
    [
        ("shootLengthCm", ShootLengthCm is not (null or (>= 0 and <= ReadingLimits.MostLengthCm)), $"Shoot length is 0 to {ReadingLimits.Shoot(units)}."),
        ("shadedFraction", ShadedFraction is not (null or (>= 0 and <= 1)), "Shade is 0 to 100 % of the ground, like 35."),
        ("growingTipsPct", GrowingTipsPct is not (null or (>= 0 and <= 100)), "Growing tips are 0 to 100 %, like 40."),
        ("visualStress", VisualStress is not (null or (>= 0 and <= 3)), "Stress seen is 0, 1, 2 or 3."),
        ("canopy", ShootLengthCm is null && ShadedFraction is null && GrowingTipsPct is null && VisualStress is null, "Enter at least one thing that you saw."),
    ];

    // Names only: a number is no word of the list.
    private static T? Word<T>(string? text)
        where T : struct, Enum => Enum.GetValues<T>().Cast<T?>().FirstOrDefault(value => string.Equals(value.ToString(), text, StringComparison.OrdinalIgnoreCase));

    /// <summary>A leaf as the phone sends it.</summary>
    public sealed record LeafMessage
    {
        /// <summary>When it was read.</summary>
        public DateTimeOffset? TakenAt { get; init; }

        /// <summary>Balancing pressure. [bar, positive]</summary>
        public double? TensionBar { get; init; }

        /// <summary>Group of vines along the block.</summary>
        public string? Group { get; init; }

        /// <summary>sun or shade.</summary>
        public string? Exposure { get; init; }

        /// <summary>[min]</summary>
        public double? BaggedMin { get; init; }

        /// <summary>[s]</summary>
        public double? DelayS { get; init; }

        internal IEnumerable<(string Field, bool Wrong, string Rule)> Checks(int place, UnitChoice units)
        {
            string Field(string name) => string.Create(CultureInfo.InvariantCulture, $"leaves[{place}].{name}");
            return
            [
                (Field("takenAt"), TakenAt is null, "A leaf says when it was read, like 2025-01-22T12:30:00+02:00."),
                (Field("tensionBar"), TensionBar is not (> 0 and <= ReadingLimits.MostTensionBar), $"A leaf’s pressure is above 0 and at most {ReadingLimits.Tension(units)}."),
                (Field("group"), Group?.Length > LongestName, $"A group has at most {LongestName} letters."),
                (Field("exposure"), Exposure is not null && Word<LeafExposure>(Exposure) is null, "A leaf hung in sun or shade."),
                (Field("baggedMin"), BaggedMin is not (null or (>= 0 and <= 10_000)), "Minutes in the bag are 0 to 10000."),
                (Field("delayS"), DelayS is not (null or (>= 0 and <= 100_000)), "Seconds from cut to chamber are 0 to 100000."),
            ];
        }

        internal TakenLeaf ToLeaf() => new(TakenAt!.Value, TensionBar!.Value)
        {
            Group = string.IsNullOrWhiteSpace(Group) ? null : Group.Trim(),
            Exposure = Word<LeafExposure>(Exposure),
            BaggedMin = BaggedMin,
            DelayS = DelayS,
        };
    }

    /// <summary>A depth as the phone sends it.</summary>
    public sealed record DepthMessage
    {
        /// <summary>[cm]</summary>
        public double? DepthCm { get; init; }

        /// <summary>[m³/m³]</summary>
        public double? VwcM3PerM3 { get; init; }

        /// <summary>Neutron count.</summary>
        public double? Count { get; init; }

        internal IEnumerable<(string Field, bool Wrong, string Rule)> Checks(int place, UnitChoice units)
        {
            string Field(string name) => string.Create(CultureInfo.InvariantCulture, $"depths[{place}].{name}");
            return
            [
                (Field("depthCm"), DepthCm is not (> 0 and <= ReadingLimits.MostLengthCm), $"A depth is above 0 and at most {ReadingLimits.Depth(units)}."),
                (Field("vwcM3PerM3"), VwcM3PerM3 is not (null or (>= 0 and <= 1)), "Water content is 0 to 100 %, like 24."),
                (Field("count"), Count is { } count && !(count >= 0 && double.IsFinite(count)), "A count is 0 or more."),
                (Field("vwcM3PerM3"), VwcM3PerM3 is null == Count is null, "A depth has either a water content or a count."),
            ];
        }
    }
}
