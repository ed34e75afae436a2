namespace EstateWater.Planning.WhatIf;

/// <summary>A night of a source within the horizon, for choosing one.</summary>
/// <param name="Date">The day on which its window opens; its name.</param>
/// <param name="Opens">From when on a set may run, in estate time.</param>
/// <param name="Closes">When the window closes, in estate time.</param>
public sealed record SourceNight(DateOnly Date, DateTimeOffset Opens, DateTimeOffset Closes);
