using EstateWater.Data.Model;
using EstateWater.Planning;

namespace EstateWater.Web.State;

/// <summary>What the pages show: the estate's contents and the plan made from them at one moment. Shared by all pages; never changed.</summary>
public sealed record EstateSnapshot
{
    /// <summary>Everything the estate knows.</summary>
    public required EstateContents Contents { get; init; }

    /// <summary>The plan made from it.</summary>
    public required Plan Plan { get; init; }

    /// <summary>What the plan was made from, for trying other hours without learning anew; null without an estate.</summary>
    public FittedEstate? Fitted { get; init; }

    /// <summary>Why there is no plan although there is an estate; null when there is one.</summary>
    public string? Problem { get; init; }

    /// <summary>Rises with every change of the data or of the hour; equal versions are equal snapshots.</summary>
    public required long Version { get; init; }

    /// <summary>The plan published last, with its sets and what the irrigators confirmed; null until one is published.</summary>
    public PublishedPlan? Published { get; init; }

    /// <summary>Sets of any published plan that have begun and of which nobody said anything: the plan takes them as run.</summary>
    public IReadOnlyList<PublishedSet> Begun { get; init; } = [];

    /// <summary>False while nothing has been imported: then everything else is empty.</summary>
    public bool HasEstate => Contents.Blocks.Count > 0;

    /// <summary>Whether there is an estate and a plan for it.</summary>
    public bool HasPlan => HasEstate && Problem is null;

    /// <summary>The estate's time zone.</summary>
    public TimeZoneInfo TimeZone => TimeZoneInfo.FindSystemTimeZoneById(Contents.Estate.TimeZone);

    /// <summary>The moment it shows, in estate time.</summary>
    public DateTimeOffset AsOf => TimeZoneInfo.ConvertTime(Plan.AsOf, TimeZone);

    /// <summary>The estate's day.</summary>
    public DateOnly Today => DateOnly.FromDateTime(AsOf.DateTime);

    /// <summary>The estate's day of an instant.</summary>
    public DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, TimeZone).DateTime);

    /// <summary>A snapshot of nothing, for a database without an estate.</summary>
    public static EstateSnapshot Empty(DateTimeOffset asOf, long version) => new()
    {
        Contents = new EstateContents { Estate = new Estate { Name = "EstateWater", TimeZone = "UTC" }, Blocks = [] },
        Plan = new Plan
        {
            AsOf = asOf,
            HorizonDays = 0,
            HeatSpells = [],
            Blocks = [],
            Sets = [],
            Unmet = [],
            Water = [],
            Packing = new PackingQuality(0, 0, 0, true),
        },
        Version = version,
    };
}
