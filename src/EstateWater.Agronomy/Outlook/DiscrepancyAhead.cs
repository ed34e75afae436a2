using EstateWater.Agronomy.WaterStatus;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Agronomy.Outlook;

/// <summary>The slow discrepancy of the coming days, member by member, given what each member left unexplained.</summary>
internal static class DiscrepancyAhead
{
    /// <summary>By day ahead, then member. [MPa]</summary>
    /// <remarks>Gaussian conditional (Rasmussen and Williams 2006, Eq. 2.25–2.26): k(t)ᵀ R⁻¹ (y − model), and what stays unknown of it and of the vines that are not read.</remarks>
    public static double[][] Of(FittedBlock block, WaterPotentialMeasure measure, int todayIndex, int days)
    {
        var members = block.Unknowns[0].Length;
        var numbers = new NormalNumbers(block.Evidence.Code + " ahead");
        var chance = Enumerable.Range(0, members).Select(_ => numbers.Next()).ToArray();
        var discrepancy = block.Discrepancy;
        var share = Discrepancy.ShowsIn(Observation.KindOf(measure));
        var variance = discrepancy.SlowMpa * discrepancy.SlowMpa;
        var vines = block.Evidence.VinesMpa * block.Evidence.VinesMpa;
        var ahead = new double[days][];
        if (block.Observations.Count == 0)
        {
            Array.Fill(ahead, [.. chance.Select(c => share * Math.Sqrt(variance + vines) * c)]);
            return ahead;
        }

        var factor = discrepancy.Covariance(block.Observations).Cholesky();
        var unexplained = factor.Solve(Matrix<double>.Build.Dense(
            block.Observations.Count, members, (k, m) => block.Observations[k].Value - block.Predicted[k][m]));
        for (var day = 0; day < days; day++)
        {
            var with = discrepancy.With(block.Observations, todayIndex + day);
            var left = Math.Sqrt(Math.Max(0, variance - with.DotProduct(factor.Solve(with))) + vines);
            var middle = with * unexplained;
            ahead[day] = [.. chance.Select((c, m) => share * (middle[m] + (left * c)))];
        }

        return ahead;
    }
}
