using EstateWater.Simulation.Estate;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>How good outlooks were at one lead, against the true tension.</summary>
/// <param name="LeadDays">How far ahead.</param>
/// <param name="Count">Outlooks that were held against the truth.</param>
/// <param name="Error">Sum of absolute errors of the middle. [bar]</param>
/// <param name="NoChangeError">The same of "as last read". [bar]</param>
/// <param name="Inside">How many true values lay in the 80 % band.</param>
internal sealed record OutlookScore(int LeadDays, int Count, double Error, double NoChangeError, int Inside)
{
    public static OutlookScore Of(int lead, IEnumerable<Expectation> expectations, SimulatedEstate estate)
    {
        var held = expectations
            .Where(e => e.LeadDays == lead && e.LastReadBar is not null && e.Date < estate.Today)
            .Select(e => (Expected: e, True: estate.TrueTensionBar(e.Block, e.Date, estate.Block(e.Block).Spec.Measure)))
            .ToList();
        return new OutlookScore(
            lead,
            held.Count,
            held.Sum(h => Math.Abs(h.Expected.Band.P50 - h.True)),
            held.Sum(h => Math.Abs(h.Expected.LastReadBar!.Value - h.True)),
            held.Count(h => h.True >= h.Expected.Band.P10 && h.True <= h.Expected.Band.P90));
    }

    /// <summary>One CSV row for each outlook whose day was lived: seed, block, date of the outlook, days ahead, measure, P10, P50, P90, true tension, last read, growth stage, Tmax, ceiling.</summary>
    public static IEnumerable<string> Rows(ulong seed, IEnumerable<Expectation> expectations, SimulatedEstate estate) =>
        expectations.Where(e => e.Date < estate.Today).Select(e =>
        {
            var spec = estate.Block(e.Block).Spec;
            var stage = estate.TrueDay(e.Block, e.Date).Stage;
            return FormattableString.Invariant(
                $"{seed},{e.Block},{e.Date.AddDays(-e.LeadDays):yyyy-MM-dd},{e.LeadDays},{spec.Measure},{e.Band.P10:0.00},{e.Band.P50:0.00},{e.Band.P90:0.00},{estate.TrueTensionBar(e.Block, e.Date, spec.Measure):0.00},{e.LastReadBar:0.00},{stage:0.0},{estate.Weather(spec.Station, e.Date).TMaxC:0.0},{estate.Spec.TargetOf(spec, stage)?.CeilingBar:0.0}");
        });

    public static OutlookScore operator +(OutlookScore a, OutlookScore b) =>
        new(a.LeadDays, a.Count + b.Count, a.Error + b.Error, a.NoChangeError + b.NoChangeError, a.Inside + b.Inside);

    public override string ToString() => FormattableString.Invariant(
        $"{LeadDays} days ahead: error {Error / Count:0.00} bar, {Error / NoChangeError:0.00} of no change, {100.0 * Inside / Count:0} % in the 80 % band, of {Count}");
}
