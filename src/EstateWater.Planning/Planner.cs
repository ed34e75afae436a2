using System.Globalization;
using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Weather;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning;

/// <summary>Turns what is known of an estate into one answer: which blocks to water, how many hours, when, and which to leave dry.</summary>
public static class Planner
{
    /// <summary>Longest horizon; the shortest is one day. [d]</summary>
    public const int LongestHorizonDays = 30;

    /// <summary>Plans from a request. The same request gives the same plan.</summary>
    /// <param name="request">What may be known.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The horizon is outside 1 to 30 days.</exception>
    public static Plan Plan(PlanRequest request, CancellationToken cancellation = default) => Plan(Fit(request, cancellation), request, cancellation);

    /// <summary>The slow part: learns every block from its readings. Serves any number of plans that differ in hours by hand and changes.</summary>
    /// <param name="request">What may be known.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FittedEstate Fit(PlanRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.HorizonDays is < 1 or > LongestHorizonDays)
        {
            throw new ArgumentOutOfRangeException(nameof(request), request.HorizonDays, $"HorizonDays must be 1 to {LongestHorizonDays} days");
        }

        return FittedEstate.Of(request, cancellation);
    }

    /// <summary>Brings a fitted estate up to newer readings of a few blocks in a hundredth of the time: only those are learned anew.</summary>
    /// <remarks>
    /// They are learned with what the estate's blocks told of one another when all were last learned
    /// (<see cref="FittedEstate.LearnedAsOf"/>), and planned with what water was worth later in the season then, so the
    /// answer may differ from <see cref="Fit"/> by as much as the new readings would move those; all other blocks stay as
    /// they are. Where anything else changed (another day, weather, a source, water applied, a declaration) or more than a
    /// tenth of the blocks, all are learned.
    /// </remarks>
    /// <param name="estate">As <see cref="Fit"/> or this gave it.</param>
    /// <param name="request">What may be known now.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FittedEstate Refit(FittedEstate estate, PlanRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(estate);
        ArgumentNullException.ThrowIfNull(request);
        return estate.Refitted(request, cancellation) ?? Fit(request, cancellation);
    }

    /// <summary>The quick part: needs, packing and what follows, from an estate fitted before.</summary>
    /// <param name="estate">As <see cref="Fit"/> gave it.</param>
    /// <param name="request">The request it was fitted to, with other hours by hand and changes or the same.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">Changes contradict each other or the estate; the message says how, as <see cref="Conflicts"/> does.</exception>
    public static Plan Plan(FittedEstate estate, PlanRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(estate);
        ArgumentNullException.ThrowIfNull(request);
        if (Conflicts(estate, request) is { Count: > 0 } conflicts)
        {
            throw new ArgumentException(string.Join(" ", conflicts));
        }

        var needs = estate.Needs(request, cancellation);
        var sources = estate.SourceNights(needs, request.Changes);
        var packed = estate.Packed(sources, cancellation);
        return new PlanWriter(estate, needs, sources, packed).Write() with { ChangesByHand = ChangesByHand(request) };
    }

    /// <summary>Why the request's changes cannot all be kept, in words; empty when they can.</summary>
    /// <param name="estate">As <see cref="Fit"/> gave it.</param>
    /// <param name="request">The request it was fitted to, with changes.</param>
    public static IReadOnlyList<Agronomy.Units.Sentence> Conflicts(FittedEstate estate, PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(estate);
        ArgumentNullException.ThrowIfNull(request);
        return request.Changes.Count == 0 ? [] : new ChangeConflicts(estate, request).Find();
    }

    private static List<string>? ChangesByHand(PlanRequest request)
    {
        var hours = request.HoursByHand
            .OrderBy(h => h.Key, StringComparer.Ordinal)
            .Select(h => string.Create(CultureInfo.InvariantCulture, $"{h.Key} gets {h.Value:0.##} h"));
        var others = request.Changes.Where(c => c is not SetPinned).Select(c => c.Words);
        var sets = request.Changes.OfType<SetPinned>().GroupBy(p => p.Valve).Select(valve => SetPinned.Tell(valve).ToString());
        return hours.Concat(others).Concat(sets).ToList() is { Count: > 0 } all ? all : null;
    }
}
