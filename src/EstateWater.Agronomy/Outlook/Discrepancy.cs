using EstateWater.Agronomy.Methods;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>What reading sets show beyond the leaves' own scatter: a part that stays for days, because no model follows a vine all the way, and a part that is new with every set.</summary>
/// <param name="SlowMpa">Standard deviation of the part that stays. [MPa]</param>
/// <param name="DaysToFade">After so many days a share of 1/e of it is left. [d]</param>
/// <param name="SetMpa">Standard deviation of the part that is new with every set: observer, hour, vines chosen. [MPa]</param>
/// <remarks>
/// Model discrepancy after Kennedy and O'Hagan (2001), with the covariance σ² exp(−|t − t′| ∕ τ). Because sets of one
/// block share it, ten sets that agree do not make the outlook ten times as sure; and the last sets' surprise is carried
/// ahead by as much as the estate's own sets say that it lasts (<see cref="DiscrepancyFit"/>).
/// </remarks>
[Method(
    "What the model does not follow",
    Source = "Kennedy & O'Hagan (2001), J. R. Stat. Soc. B 63:425–464 (from memory, to be checked): a Gaussian discrepancy between model and nature",
    Check = "Prediction by the Gaussian conditional (Rasmussen & Williams 2006, Gaussian Processes for Machine Learning, Eq. 2.25–2.26)")]
internal sealed record Discrepancy(double SlowMpa, double DaysToFade, double SetMpa)
{
    // What tubes and the model of their place do not follow. [m³/m³]; ours.
    private const double SoilErrorM3PerM3 = 0.012;

    // Vines and canopy change over the winter: last season's sets count for less.
    private const double LastSeasonVarianceFactor = 4;

    /// <summary>Before any set is read. Ours.</summary>
    public static Discrepancy Unread { get; } = new(0.04, 14, 0.02);

    /// <summary>Covariance of what is read with all that is not the model's.</summary>
    /// <param name="observations">In the order of rows.</param>
    public Matrix<double> Covariance(IReadOnlyList<Observation> observations) =>
        Matrix<double>.Build.Dense(observations.Count, observations.Count, (i, j) =>
            (i == j ? observations[i].Doubt * OwnVariance(observations[i]) : 0) + Shared(observations[i], observations[j]));

    /// <summary>Covariance of the slow part on a day of this season with each observation.</summary>
    public Vector<double> With(IReadOnlyList<Observation> observations, int day) =>
        Vector<double>.Build.Dense(observations.Count, k => observations[k] is { Kind: not ObservationKind.Soil, IsLastSeason: false } o
            ? Slow(day - o.Day) * ShowsIn(o.Kind)
            : 0);

    /// <summary>Variance of one observation about what the model with its slow part says.</summary>
    public double OwnVariance(Observation observation) =>
        Season(observation) * (observation.Kind == ObservationKind.Soil
            ? SoilErrorM3PerM3 * SoilErrorM3PerM3
            : (observation.StandardError * observation.StandardError) + Math.Pow(ShowsIn(observation.Kind) * SetMpa, 2));

    private double Shared(Observation a, Observation b) =>
        a.Kind == ObservationKind.Soil || b.Kind == ObservationKind.Soil || a.IsLastSeason != b.IsLastSeason
            ? 0
            : Season(a) * Slow(a.Day - b.Day) * ShowsIn(a.Kind) * ShowsIn(b.Kind);

    private double Slow(int days) => SlowMpa * SlowMpa * Math.Exp(-Math.Abs(days) / DaysToFade);

    private static double Season(Observation observation) => observation.IsLastSeason ? LastSeasonVarianceFactor : 1;

    /// <summary>Share of the midday discrepancy that shows in a measure: before dawn tension spreads about half as much. Ours.</summary>
    public static double ShowsIn(ObservationKind kind) => kind == ObservationKind.Predawn ? 0.5 : 1;
}
