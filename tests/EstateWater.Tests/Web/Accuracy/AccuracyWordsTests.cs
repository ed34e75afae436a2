using EstateWater.Planning.Accuracy;
using EstateWater.Web.Features.Accuracy;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Accuracy;

public sealed class AccuracyWordsTests
{
    [Fact]
    public void The_owner_reads_one_sentence() =>
        Assert.Equal(
            "A week ahead the outlook was off by 0.6 bar on average, about half as much as taking the last reading for granted; of ten readings, eight fell inside the band.",
            AccuracyWords.Sentence(new AccuracyScore(40, 0.6, 0, 0.79, 1.2, null), UnitChoice.Metric));

    [Theory]
    [InlineData(0.3, 1.2, "about a quarter as much as")]
    [InlineData(0.4, 1.2, "about a third as much as")]
    [InlineData(0.8, 1.2, "about two thirds as much as")]
    [InlineData(1.0, 1.2, "less than")]
    [InlineData(1.2, 1.2, "about as much as")]
    [InlineData(1.5, 1.2, "more than")]
    [InlineData(0.5, 0, "more than")]
    [InlineData(0, 0, "as much as")]
    public void It_says_how_the_outlook_stands_against_no_change(double error, double noChange, string words) =>
        Assert.Contains($"on average, {words} taking", AccuracyWords.Sentence(new AccuracyScore(40, error, 0, 0.8, noChange, null), UnitChoice.Metric), StringComparison.Ordinal);

    [Theory]
    [InlineData(1, 1, "of one reading, one fell")]
    [InlineData(6, 2 / 3.0, "of six readings, four fell")]
    [InlineData(10, 0, "of ten readings, none fell")]
    public void A_few_readings_are_counted_as_they_are(int sets, double inside, string words) =>
        Assert.Contains(words, AccuracyWords.Sentence(new AccuracyScore(sets, 1, 0, inside, 1, null), UnitChoice.Metric), StringComparison.Ordinal);

    [Fact]
    public void Nothing_held_is_said() =>
        Assert.Contains("nobody can say how good the outlook of B1 is", AccuracyWords.Sentence(null, UnitChoice.Metric, "the outlook of B1"), StringComparison.Ordinal);

    [Theory]
    [InlineData(-0.7, "0.7 bar drier than expected")]
    [InlineData(0.5, "0.5 bar wetter than expected")]
    public void An_error_to_one_side_is_said(double bias, string words) =>
        Assert.Contains(words, AccuracyWords.Lean(new AccuracyScore(40, 1, bias, 0.8, 1, null), UnitChoice.Metric), StringComparison.Ordinal);

    [Fact]
    public void An_error_to_both_sides_is_not() => Assert.Null(AccuracyWords.Lean(new AccuracyScore(40, 1, 0.3, 0.8, 1, null), UnitChoice.Metric));

    [Theory]
    [InlineData(0.69, "too narrow")]
    [InlineData(0.95, "wider than it needs to be")]
    public void A_band_that_holds_too_few_or_too_many_is_said(double inside, string words) =>
        Assert.Contains(words, AccuracyWords.BandIsOff(new AccuracyScore(40, 1, 0, inside, 1, null)), StringComparison.Ordinal);

    [Fact]
    public void A_band_that_holds_what_it_should_is_not() => Assert.Null(AccuracyWords.BandIsOff(new AccuracyScore(40, 1, 0, 0.8, 1, null)));

    [Theory]
    [InlineData(-0.71, "−0.7")]
    [InlineData(0.26, "+0.3")]
    [InlineData(-0.04, "0.0")]
    [InlineData(0.04, "0.0")]
    public void Bias_has_its_sign(double bar, string text) => Assert.Equal(text, AccuracyWords.Bias(bar, UnitChoice.Metric));

    [Fact]
    public void Progress_is_in_words()
    {
        var at34 = new HindcastProgress(34, 120);
        Assert.EndsWith("34 of 120 past mornings done.", AccuracyWords.Progress(new LookBack(LookBackPhase.Working, at34)), StringComparison.Ordinal);
        Assert.StartsWith("Stopped after 34 of 120", AccuracyWords.Progress(new LookBack(LookBackPhase.Stopped, at34)), StringComparison.Ordinal);
        Assert.EndsWith("failed: no disk", AccuracyWords.Progress(new LookBack(LookBackPhase.Failed, Problem: "no disk")), StringComparison.Ordinal);
    }
}
