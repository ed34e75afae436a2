using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NetTopologySuite;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO;

namespace EstateWater.Data.Store;

/// <summary>Instants as ticks of UTC; the offset a person wrote is not kept, the estate's zone tells the clock.</summary>
internal sealed class UtcTicksConverter() : ValueConverter<DateTimeOffset, long>(
    instant => instant.UtcTicks,
    ticks => new DateTimeOffset(ticks, TimeSpan.Zero));

/// <summary>Outlines as well-known binary, longitude first, on WGS 84.</summary>
internal sealed class OutlineConverter() : ValueConverter<Geometry, byte[]>(outline => Write(outline), bytes => Read(bytes))
{
    // Well-known binary does not say its reference system.
    private static readonly NtsGeometryServices Wgs84 = new(new PrecisionModel(), srid: 4326);

    private static byte[] Write(Geometry outline) => new WKBWriter().Write(outline);

    private static Geometry Read(byte[] bytes) => new WKBReader(Wgs84).Read(bytes);
}

/// <summary>Outlines are the same when every position is.</summary>
internal sealed class OutlineComparer() : ValueComparer<Geometry>(
    (a, b) => a == null ? b == null : b != null && a.EqualsExact(b),
    outline => outline.GetHashCode(),
    outline => outline.Copy());
