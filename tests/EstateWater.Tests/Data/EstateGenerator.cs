using CsCheck;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Geodesy;
using EstateWater.Data.Model;
using NetTopologySuite.Geometries;

namespace EstateWater.Tests.Data;

/// <summary>Random estates that a folder may hold: odd codes, every optional cell there or not, clocks that change.</summary>
internal static class EstateGenerator
{
    private static readonly GeometryFactory Wgs84 = new(new PrecisionModel(), 4326);
    private static readonly Gen<string> Code = Gen.OneOf([.. "AB12 -,\"'éß日/"]).Array[1, 6].Select(c => new string(c).Trim()).Where(c => c.Length > 0);
    private static readonly Gen<string?> Label = Gen.Null(Code);
    private static readonly Gen<string?> Note = Gen.Null(Gen.OneOf([.. "ab ,;\"\r\n\té"]).Array[1, 8].Select(c => new string(c)).Where(c => c.Trim().Length > 0));
    private static readonly Gen<string> Zone = Gen.OneOf("Africa/Johannesburg", "Australia/Adelaide", "America/Los_Angeles", "Europe/Paris", "America/Santiago", "UTC");
    private static readonly Gen<DateOnly> Date = Gen.DateOnly[new(1950, 1, 1), new(2100, 12, 31)];
    private static readonly Gen<DateTimeOffset> Instant = Gen.Frequency(
        (4, (IGen<long>)Gen.Long[0, 3_000_000_000].Select(s => s * TimeSpan.TicksPerSecond)),
        (1, Gen.Long[0, 30_000_000_000_000_000])).Select(ticks => DateTimeOffset.UnixEpoch.AddTicks(ticks));

    /// <summary>Whole estates, in order.</summary>
    public static Gen<EstateContents> Estates { get; } =
        from places in Places
        from blocks in Blocks(places.Stations, places.Valves)
        from observed in Observed(places, blocks)
        select observed.InOrder();

    private static Gen<EstateContents> Places =>
        from estate in Gen.Select(Code, Zone, Label, Gen.Enum<DisplayUnits>(), (n, z, c, u) => new Estate { Name = n, TimeZone = z, Country = c, DisplayUnits = u })
        from stations in Gen.Select(Code, Number(-90, 90), Number(-180, 180), Number(-400, 4000), Number(1, 10), (c, a, o, e, w) =>
            new Station { Code = c, LatitudeDegrees = a, LongitudeDegrees = o, ElevationM = e, WindHeightM = w }).Array[1, 3]
        from sources in Gen.Select(Code, Number(1, 500), Gen.TimeOnly, Gen.TimeOnly, Maybe(0, 1e6), Maybe(0, 5), (c, f, a, b, s, w) =>
            new WaterSource { Code = c, MaxFlowM3PerH = f, DailyFrom = Minute(a), DailyTo = Minute(b), SeasonAllocationM3 = s, WaterEcDsPerM = w }).Array[1, 3]
        let sourceCodes = sources.Select(s => s.Code).ToArray()
        from valves in Gen.Select(Code, Gen.OneOf(sourceCodes), (c, s) => new Valve { Code = c, SourceCode = s }).Array[1, 4]
        select new EstateContents
        {
            Estate = estate,
            Stations = [.. stations.DistinctBy(s => s.Code)],
            Sources = [.. sources.DistinctBy(s => s.Code)],
            Valves = [.. valves.DistinctBy(v => v.Code)],
            Blocks = [],
        };

    private static Gen<EstateContents> Observed(EstateContents places, IReadOnlyList<Block> blocks)
    {
        var block = Gen.OneOf([.. blocks.Select(b => b.Code)]);
        var station = Gen.OneOf([.. places.Stations.Select(s => s.Code)]);
        var valve = Gen.OneOf([.. places.Valves.Select(v => v.Code)]);
        return
            from stages in Gen.Select(block, Date, Number(1, 47), (b, d, e) => new StageObservation { BlockCode = b, Date = d, ElStage = e }).Array[0, 4]
            from targets in Targets(block).Array[0, 4]
            from weather in Weather(station).Array[0, 4]
            from forecasts in Gen.Select(Weather(station), Instant, Label, (w, i, m) => Forecast(w, i, m)).Array[0, 4]
            from readings in Readings(block).Array[0, 6]
            from moistures in Moistures(block).Array[0, 4]
            from calibrations in Gen.Select(Gen.Null(block), Number(-1, 1), Number(0.1, 2), (b, i, s) => new ProbeCalibration { BlockCode = b, Intercept = i, Slope = s }).Array[0, 3]
            from visits in Visits(block).Array[0, 4]
            from waters in Gen.Select(valve, Instant, Number(0, 48), Maybe(0, 1000), Label, Note, (v, i, h, m, c, n) =>
                new AppliedWater { ValveCode = v, StartedAt = i, Hours = h, MeterM3 = m, ConfirmedBy = c, Note = n }).Array[0, 4]
            select places with
            {
                Blocks = blocks,
                Stages = [.. stages.DistinctBy(s => (s.BlockCode, s.Date))],
                Targets = [.. targets.DistinctBy(t => (t.BlockCode, t.Fruit, t.Measure))],
                Weather = [.. weather.DistinctBy(w => (w.StationCode, w.Date))],
                Forecasts = [.. forecasts.DistinctBy(f => (f.StationCode, f.IssuedAt, f.Date, f.Member))],
                ChamberReadings = [.. readings.Where((r, i) => r.Vine is null || readings[..i].All(o => (o.BlockCode, o.TakenAt, o.Vine) != (r.BlockCode, r.TakenAt, r.Vine)))],
                SoilMoistures = [.. moistures.DistinctBy(m => (m.BlockCode, m.Date, m.Tube, m.DepthCm))],
                ProbeCalibrations = [.. calibrations.DistinctBy(c => c.BlockCode)],
                CanopyVisits = [.. visits.DistinctBy(v => (v.BlockCode, v.Date))],
                AppliedWaters = [.. waters.DistinctBy(w => (w.ValveCode, w.StartedAt))],
            };
    }

    private static Gen<Block[]> Blocks(IReadOnlyList<Station> stations, IReadOnlyList<Valve> valves)
    {
        var places = Gen.Select(Gen.OneOf([.. stations.Select(s => s.Code)]), Gen.OneOf([.. valves.Select(v => v.Code)]));
        var words = Gen.Select(Code, Label, Label, Label, Gen.Enum<FruitColour>(), Gen.Nullable(Gen.Int[1850, 2030]));
        var numbers = Gen.Select(Number(0.1, 10), Gen.Nullable(Number(0.01, 1)), Gen.Nullable(Number(0.01, 1)), Maybe(0, 1), Maybe(50, 200), Gen.Int[1, 5]);
        return Gen.Select(places, words, numbers, Outline, (p, w, n, outline) => new Block
        {
            Code = w.Item1,
            Name = w.Item2,
            Variety = w.Item3,
            Rootstock = w.Item4,
            Fruit = w.Item5,
            PlantedYear = w.Item6,
            StationCode = p.Item1,
            ValveCode = p.Item2,
            RowSpacingM = n.Item1,
            VineSpacingM = n.Item1 / 3,
            EmittersPerVine = n.Item1 / 7,
            EmitterFlowLPerH = n.Item1 * 1.1,
            RootDepthM = n.Item1 / 9,
            AvailableWaterMmPerM = n.Item1 * 17,
            EmissionUniformity = n.Item2,
            WettedFraction = n.Item3,
            ShadedFraction = n.Item4,
            TargetShootLengthCm = n.Item5,
            Priority = n.Item6,
            Outline = outline,
            AreaM2 = GeodesicArea.SquareMetres(outline),
        }).Array[1, 4].Select(blocks => blocks.DistinctBy(b => b.Code).ToArray());
    }

    // Corners in order around a middle never cross; a hole is the same outline, smaller and the other way round.
    private static Gen<Geometry> Outline =>
        from longitude in Number(-179, 179)
        from latitude in Number(-80, 80)
        from reaches in Number(0.5, 1).Array[3, 9]
        from form in Gen.Int[0, 2]
        let outer = Ring(longitude, latitude, reaches, 0.002)
        let hole = (LinearRing)Ring(longitude, latitude, reaches, 0.0005).Reverse()
        select form switch
        {
            0 => (Geometry)Wgs84.CreatePolygon(outer),
            1 => Wgs84.CreatePolygon(outer, [hole]),
            _ => Wgs84.CreateMultiPolygon([Wgs84.CreatePolygon(outer, [hole]), Wgs84.CreatePolygon(Ring(longitude + 0.01, latitude, reaches, 0.002))]),
        };

    private static LinearRing Ring(double longitude, double latitude, double[] reaches, double size)
    {
        var corners = reaches.Select((reach, i) =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / reaches.Length);
            return new Coordinate(longitude + (size * reach * cos), latitude + (size * reach * sin));
        }).ToList();
        return Wgs84.CreateLinearRing([.. corners, corners[0].Copy()]);
    }

    private static Gen<Target> Targets(Gen<string> block) =>
        from of in Gen.Select(Gen.Null(block), Gen.Nullable(Gen.Enum<FruitColour>()), Gen.Enum<WaterPotentialMeasure>())
        from stages in Gen.Select(Number(1, 47), Number(1, 47))
        from bar in Gen.Select(Number(0.5, 20), Number(0.5, 20))
        select new Target
        {
            BlockCode = of.Item1,
            Fruit = of.Item2,
            Measure = of.Item3,
            FromElStage = Math.Min(stages.Item1, stages.Item2),
            ToElStage = Math.Max(stages.Item1, stages.Item2),
            FloorBar = Math.Min(bar.Item1, bar.Item2),
            CeilingBar = Math.Max(bar.Item1, bar.Item2),
        };

    private static Gen<WeatherDay> Weather(Gen<string> station) =>
        from of in Gen.Select(station, Date)
        from t in Gen.Select(Number(-20, 45), Number(0, 15))
        from rh in Gen.Select(Maybe(50, 100), Maybe(0, 50))
        from others in Gen.Select(Maybe(0, 20), Maybe(0, 40), Maybe(0, 100))
        select new WeatherDay
        {
            StationCode = of.Item1,
            Date = of.Item2,
            TMaxC = t.Item1,
            TMinC = t.Item1 - t.Item2,
            RhMaxPct = rh.Item1,
            RhMinPct = rh.Item2,
            WindMPerS = others.Item1,
            SolarMjPerM2 = others.Item2,
            RainMm = others.Item3,
        };

    private static ForecastDay Forecast(WeatherDay day, DateTimeOffset issuedAt, string? member) => new()
    {
        StationCode = day.StationCode,
        IssuedAt = issuedAt,
        Member = member,
        Date = day.Date,
        TMaxC = day.TMaxC,
        TMinC = day.TMinC,
        RhMaxPct = day.RhMaxPct,
        RhMinPct = day.RhMinPct,
        WindMPerS = day.WindMPerS,
        SolarMjPerM2 = day.SolarMjPerM2,
        RainMm = day.RainMm,
    };

    private static Gen<ChamberReading> Readings(Gen<string> block) =>
        from of in Gen.Select(block, Gen.Frequency((1, (IGen<DateTimeOffset>)Instant), (2, Gen.Const(DateTimeOffset.UnixEpoch))), Gen.Enum<WaterPotentialMeasure>(), Label, Label)
        from leaf in Gen.Select(Number(0.1, 30), Gen.Nullable(Gen.Enum<LeafExposure>()), Maybe(0, 90), Maybe(0, 120))
        from said in Gen.Select(Label, Note)
        select new ChamberReading
        {
            BlockCode = of.Item1,
            TakenAt = of.Item2,
            Measure = of.Item3,
            Group = of.Item4,
            Vine = of.Item5,
            TensionBar = leaf.Item1,
            Exposure = leaf.Item2,
            BaggedMin = leaf.Item3,
            DelayS = leaf.Item4,
            Observer = said.Item1,
            Note = said.Item2,
        };

    private static Gen<SoilMoisture> Moistures(Gen<string> block) =>
        from of in Gen.Select(block, Date, Code, Number(5, 200))
        from vwc in Maybe(0, 0.6)
        from counts in Gen.Select(Number(0, 9000), Number(1, 15000))
        select new SoilMoisture
        {
            BlockCode = of.Item1,
            Date = of.Item2,
            Tube = of.Item3,
            DepthCm = of.Item4,
            VwcM3PerM3 = vwc,
            Count = vwc is null ? counts.Item1 : null,
            StandardCount = vwc is null ? counts.Item2 : null,
        };

    private static Gen<CanopyVisit> Visits(Gen<string> block) =>
        from of in Gen.Select(block, Date)
        from seen in Gen.Select(Maybe(0, 200), Maybe(0, 1), Maybe(0, 100), Gen.Nullable(Gen.Int[0, 3]), Note)
        select new CanopyVisit
        {
            BlockCode = of.Item1,
            Date = of.Item2,
            ShootLengthCm = seen.Item1,
            ShadedFraction = seen.Item2,
            GrowingTipsPct = seen.Item3,
            VisualStress = seen.Item4,
            Note = seen.Item5,
        };

    private static Gen<double> Number(double from, double to) => Gen.Double[from, to];

    private static Gen<double?> Maybe(double from, double to) => Gen.Nullable(Number(from, to));

    private static TimeOnly Minute(TimeOnly time) => new(time.Hour, time.Minute);
}
