using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.WateringRule;

namespace EstateWater.Tests.WaterStatus;

public sealed class WateringRulesTests
{
    /// <summary>Drier than wanted, soil short, tips slow, no heat, no rain, harvest far.</summary>
    private static readonly WateringEvidence Short = new()
    {
        TensionMpa = 1.45,
        TensionHalfWidthMpa = 0.1,
        CeilingMpa = 1.4,
        LimitMpa = 1.6,
        VpdKpa = 3,
        DepletionMm = 80,
        RefillDepletionMm = 70,
        TipIndex = 0.1,
        TipIndexWanted = 0.3,
        ElStage = 33,
        RainAheadMm = 0,
        DaysToHarvest = 50,
    };

    private static readonly WateringEvidence Content = Short with { TensionMpa = 1.1, DepletionMm = 45, TipIndex = 0.4 };

    private static WateringRule[] Rules(WateringEvidence block) => [.. WateringRules.Of(block).Select(a => a.Rule)];

    [Fact]
    public void Nothing_known_says_nothing() => Assert.Empty(WateringRules.Of(new WateringEvidence()));

    [Fact]
    public void A_content_block_says_nothing() => Assert.Empty(Rules(Content));

    [Fact]
    public void Vine_soil_and_tips_speak_for_water()
    {
        Assert.Equal([VineDry, SoilAtRefill, TipsSlow], Rules(Short));
        Assert.True(WateringRules.SpeaksForWater(WateringRules.Of(Short)));
    }

    [Fact]
    public void One_reason_is_enough_only_before_heat_or_past_the_limit()
    {
        var one = Content with { DepletionMm = 75 };
        Assert.False(WateringRules.SpeaksForWater(WateringRules.Of(one)));
        Assert.True(WateringRules.SpeaksForWater(WateringRules.Of(one with { HeatAhead = true })));
        Assert.True(WateringRules.SpeaksForWater(WateringRules.Of(Content with { TensionMpa = 1.65 })));
    }

    [Fact]
    public void Rain_enough_holds_water_back()
    {
        Assert.Contains(RainAhead, Rules(Short with { RainAheadMm = 90 }));
        Assert.False(WateringRules.SpeaksForWater(WateringRules.Of(Short with { RainAheadMm = 90 })));
    }

    public static TheoryData<WateringRule, WateringEvidence, WateringEvidence> Cases => new()
    {
        { VineNearCeiling, Content with { TensionMpa = 1.35 }, Content with { TensionMpa = 1.29 } },
        { VinePastLimit, Short with { TensionMpa = 1.61 }, Short with { TensionMpa = 1.6 } },
        { SoilNotAtRefill, Content with { DepletionMm = 30 }, Content with { DepletionMm = 36 } },
        { TipsVigorousEarly, Content with { TipIndex = 0.9, ElStage = 20 }, Content with { TipIndex = 0.9, ElStage = 30 } },
        { HarvestNear, Content with { DaysToHarvest = 15 }, Content with { DaysToHarvest = 15, HeatAhead = true } },
        { DryAirOnly, Short with { VpdKpa = 5.2, DepletionMm = 40 }, Short with { VpdKpa = 4.8, DepletionMm = 40 } },
        { ReadAgain, Content with { ReadingRejected = true }, Content },
        { Recovering, Content with { HoursSinceIrrigation = 12 }, Content with { HoursSinceIrrigation = 30 } },
        { RepairFirst, Content with { EmissionUniformity = 0.65 }, Content with { EmissionUniformity = 0.85 } },
        { RepairFirst, Content with { LeakKnown = true }, Content },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Each_rule_speaks_when_it_should_and_only_then(WateringRule rule, WateringEvidence with, WateringEvidence without)
    {
        Assert.Contains(rule, Rules(with));
        Assert.DoesNotContain(rule, Rules(without));
    }

    [Fact]
    public void A_rejected_reading_does_not_speak_for_water() =>
        Assert.DoesNotContain(VineDry, Rules(Short with { ReadingRejected = true }));

    [Fact]
    public void Refuses_values_that_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WateringRules.Of(Short with { TensionMpa = -1.4 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => WateringRules.Of(Short with { TipIndex = 40 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => WateringRules.Of(Short with { DepletionMm = double.NaN }));
    }
}
