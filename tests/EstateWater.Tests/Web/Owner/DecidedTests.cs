using EstateWater.Data.Model;
using EstateWater.Web.Features.Owner;
using EstateWater.Web.Parts.Units;
using static EstateWater.Tests.Web.SmallEstate;

namespace EstateWater.Tests.Web.Owner;

public sealed class DecidedTests
{
    // The small estate's dam opens at 20:00; its clock stands at 06:00.
    private static readonly DateTimeOffset Tonight = AsOf.AddHours(14);

    [Fact]
    public void What_could_not_be_run_does_not_count_as_done() =>
        Assert.Equal(
            "1 ran, 1 ran only 0.01 of 13 h, 1 could not (pump down), 1 to come",
            Done(
                Said(Set(Tonight), 6),
                Said(Set(Tonight.AddMinutes(15), 13), 0.01),
                Said(Set(Tonight.AddMinutes(30)), 0, NotRunReason.PumpDown),
                Set(Tonight.AddMinutes(45))));

    [Fact]
    public void A_reason_in_words_is_told_as_it_was_given() =>
        Assert.Equal("2 could not (snake at the valve)", Done(Said(Set(Tonight), 0, NotRunReason.Other, "snake at the valve"), Said(Set(Tonight.AddHours(1)), 0)));

    [Fact]
    public void Over_and_running_are_told_apart_from_to_come() =>
        Assert.Equal("1 running, 1 not confirmed", Done(Set(AsOf.AddHours(-1)), Set(AsOf.AddHours(-9))));

    [Fact]
    public void Last_night_and_tonight_stand_alone_and_the_rest_is_summed_up()
    {
        var decided = Published([.. Enumerable.Range(-4, 9).SelectMany(night => new[] { Set(Tonight.AddDays(night)), Set(Tonight.AddDays(night).AddHours(1)) })]);
        Assert.Equal(["18–20 Jan, three nights", "Tue 21 Jan", "Wed 22 Jan", "23–26 Jan, four nights"], decided.Nights.Select(night => night.Days));
        Assert.Equal([6, 2, 2, 8], decided.Nights.Select(night => night.Sets));
        // 6 h at 20 m³/h each.
        Assert.Equal([720, 240, 240, 960], decided.Nights.Select(night => night.VolumeM3));
        Assert.Equal(["6 not confirmed", "2 not confirmed", "2 to come", "8 to come"], decided.Nights.Select(night => night.Done));
    }

    [Fact]
    public void When_all_is_over_the_last_night_stands_alone() =>
        Assert.Equal(["18–20 Jan, three nights", "Tue 21 Jan"], Published([.. Enumerable.Range(-4, 4).Select(night => Set(Tonight.AddDays(night)))]).Nights.Select(night => night.Days));

    private static string Done(params PublishedSet[] sets) => Assert.Single(Published(sets).Nights).Done;

    private static Decided Published(params PublishedSet[] sets) => Decided.From(
        Snapshot(BlockPlanOf("B1")) with
        {
            Published = new PublishedPlan { AsOf = AsOf.AddDays(-5), PublishedAt = AsOf.AddDays(-5), PublishedBy = "Ana", PlanJson = "{}", Sets = [.. sets] },
        },
        UnitChoice.Metric);

    private static PublishedSet Set(DateTimeOffset start, double hours = 6) =>
        new() { ValveCode = "V1", SourceCode = "dam", Start = start, End = start.AddHours(hours), Hours = hours, FlowM3PerH = 20 };

    private static PublishedSet Said(PublishedSet set, double hours, NotRunReason? notRun = null, string? note = null)
    {
        set.Confirmations.Add(new SetConfirmation
        {
            EntryId = Guid.NewGuid(),
            SetId = 0,
            StartedAt = set.Start,
            Hours = hours,
            NotRun = notRun,
            Note = note,
            ConfirmedBy = "Ben",
            EnteredAt = set.End,
            ReceivedAt = set.End,
        });
        return set;
    }
}
