namespace EstateWater.Planning.Needs;
internal static class DefaultTargets { public static (double, double) For(bool w, double s, Agronomy.WaterStatus.WaterPotentialMeasure m) => (10, 14); }
