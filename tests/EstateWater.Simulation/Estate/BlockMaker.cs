using EstateWater.Simulation.Numbers;
using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Vine;

namespace EstateWater.Simulation.Estate;

/// <summary>The grounds blocks lie on.</summary>
public enum GroundKind
{
    StonySlope,
    SandyRise,
    ThinSand,
    RedLoam,
    DeepFlat,
}

/// <summary>Draws what a block is, and what is declared of it: right on paper, wrong by up to a quarter.</summary>
public static class BlockMaker
{
    /// <summary>A block's truth on a ground.</summary>
    public static BlockTruth Truth(GroundKind ground, double fullShade, Dice dice)
    {
        var (top, sub, stones, depth) = ground switch
        {
            GroundKind.StonySlope => (Texture.SandyLoam, Texture.SandyClayLoam, dice.Between(0.15, 0.3), dice.Between(0.9, 1.2)),
            GroundKind.SandyRise => (Texture.LoamySand, Texture.SandyLoam, dice.Between(0, 0.1), dice.Between(1.1, 1.4)),
            GroundKind.ThinSand => (Texture.LoamySand, Texture.SandyLoam, dice.Between(0.1, 0.2), dice.Between(0.8, 0.9)),
            GroundKind.RedLoam => (Texture.Loam, Texture.ClayLoam, dice.Between(0.05, 0.15), dice.Between(1.0, 1.3)),
            _ => (Texture.SiltLoam, Texture.Loam, dice.Between(0, 0.08), dice.Between(1.3, 1.6)),
        };
        return new BlockTruth
        {
            Topsoil = top,
            Subsoil = sub,
            StoneShare = stones,
            RootDepthM = depth,
            WettedShare = dice.Between(0.32, 0.52),
            BulbRootShare = ground == GroundKind.ThinSand ? 0.75 : dice.Between(0.5, 0.68),
            Delivery = dice.Chance(0.2) ? dice.Between(0.74, 0.88) : dice.Between(0.95, 1.03),
            Vine = Traits(fullShade, dice),
        };
    }

    /// <summary>Fills in what is declared of a block from what it is.</summary>
    public static BlockSpec Declared(BlockSpec block, Dice dice)
    {
        var truth = block.Truth;
        var available = ((truth.Topsoil.AvailableMmPerM * 0.45 / truth.RootDepthM)
            + (truth.Subsoil.AvailableMmPerM * (1 - (0.45 / truth.RootDepthM)))) * (1 - truth.StoneShare);
        return block with
        {
            RootDepthM = Math.Round(truth.RootDepthM, 1),
            AvailableWaterMmPerM = Math.Round(available * dice.Between(0.75, 1.25) / 5) * 5,
            WettedFraction = Math.Round(truth.WettedShare * dice.Between(0.75, 1.25), 2),
            ShadedFraction = Math.Round(truth.Vine.FullShade * dice.Between(0.75, 1.25), 2),
            EmissionUniformity = Math.Round(dice.Between(0.82, 0.94), 2),
            TargetShootLengthCm = Math.Round(truth.Vine.TrimmedAtCm / 5) * 5,
        };
    }

    private static VineTraits Traits(double fullShade, Dice dice)
    {
        var size = fullShade / 0.35;
        return new VineTraits
        {
            OpenConductance = dice.Between(0.27, 0.34),
            HalfClosedMpa = -dice.Between(1.15, 1.5),
            Sharpness = dice.Between(4, 6),
            RootConductance = 1.2 * size * dice.Between(0.85, 1.15),
            StemConductance = 1.6 * size * dice.Between(0.85, 1.15),
            LeafResistance = dice.Between(0.85, 1.05),
            FullLeafArea = 1.2 * size,
            FullShade = fullShade,
            TrimmedAtCm = dice.Between(105, 135),
            ShootCmPerDegreeDay = dice.Between(0.17, 0.21),
            Pace = dice.Between(0.93, 1.1),
        };
    }
}
