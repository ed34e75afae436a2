using EstateWater.Data.Model;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts.Field;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Sets;

public sealed class SetLinesTests
{
    private static readonly TimeSpan Offset = TimeSpan.FromHours(2);
    private static readonly DateTimeOffset Morning = new(2025, 1, 23, 7, 0, 0, Offset);

    [Fact]
    public void Last_nights_sets_stand_although_a_new_plan_came_out_this_morning()
    {
        var lines = SetLines.Standing(
            [Plan(1, Morning.AddDays(-1), (1, "V01", 22), (2, "V02", 23)), Plan(2, Morning, (3, "V03", 23))], SampleEstate.Contents);
        Assert.Equal([1, 3], lines.Select(l => l.SetId));
    }

    [Fact]
    public void A_plan_published_twice_at_one_moment_stands_once()
    {
        var lines = SetLines.Standing([Plan(1, Morning, (1, "V01", 23)), Plan(2, Morning, (2, "V01", 23))], SampleEstate.Contents);
        Assert.Equal([2], lines.Select(l => l.SetId));
    }

    [Fact]
    public void What_was_run_stays_run_when_a_later_plan_names_the_same_set_again()
    {
        var first = Plan(1, Morning, (1, "V01", 23));
        first.Sets[0].Confirmations.Add(new SetConfirmation
        {
            EntryId = Guid.NewGuid(),
            SetId = 1,
            Hours = 3.5,
            ConfirmedBy = "Ben",
            EnteredAt = Morning,
            ReceivedAt = Morning,
            StartedAt = Morning,
        });
        var lines = SetLines.Standing([first, Plan(2, Morning.AddHours(1), (2, "V01", 23), (3, "V02", 23))], SampleEstate.Contents);
        Assert.Equal([(2, 3.5), (3, null)], lines.Select(l => (l.SetId, l.Confirmed?.Hours)));
    }

    [Fact]
    public void A_line_is_in_estate_time_with_blocks_and_night()
    {
        var line = Assert.Single(SetLines.Standing([Plan(1, Morning, (1, "V01", 23))], SampleEstate.Contents));
        Assert.Equal(new DateTimeOffset(2025, 1, 24, 1, 0, 0, Offset), line.Start);
        Assert.Equal(Offset, line.Start.Offset);
        Assert.Equal(new DateOnly(2025, 1, 23), line.Night);
        Assert.Equal(["B01 Long Rows", "B02"], line.Blocks);
        Assert.Null(line.Confirmed);
    }

    [Fact]
    public void Near_are_the_last_night_that_ended_and_the_next()
    {
        var lines = SetLines.Standing(
            [Plan(1, Morning.AddDays(-5), (1, "V01", 20), (2, "V01", 21), (3, "V01", 23), (4, "V01", 24))], SampleEstate.Contents);
        Assert.Equal([2, 3], SetLines.Near(lines, Morning).Select(l => l.SetId));
        Assert.Equal([4], SetLines.Near(lines, Morning.AddDays(9)).Select(l => l.SetId));
        Assert.Equal([1], SetLines.Near(lines, Morning.AddDays(-9)).Select(l => l.SetId));
        Assert.Empty(SetLines.Near([], Morning));
    }

    [Theory]
    [InlineData(22, false, "Last night, Wed 22 Jan")]
    [InlineData(23, false, "Tonight, Thu 23 Jan")]
    [InlineData(24, false, "Tomorrow night, Fri 24 Jan")]
    [InlineData(26, false, "Night of Sun 26 Jan")]
    [InlineData(22, true, "Running now, from Wed 22 Jan")]
    public void Nights_have_the_names_people_use(int day, bool running, string title) =>
        Assert.Equal(title, new SetsWords(FieldLanguage.English, UnitChoice.Metric).Night(new DateOnly(2025, 1, day), Morning, running));

    [Fact]
    public void Of_a_plan_that_was_taken_back_only_what_was_run_stands_and_the_plan_before_stands_again()
    {
        var former = Plan(1, Morning, (1, "V01", 23), (2, "V02", 23));
        var later = Plan(2, Morning.AddHours(1), (3, "V03", 23), (4, "V04", 23));
        later.WithdrawnAt = Morning.AddHours(2);
        later.Sets[1].Confirmations.Add(Said(4, Guid.NewGuid(), null, 2));
        Assert.Equal([1, 2, 4], SetLines.Standing([former, later], SampleEstate.Contents).Select(l => l.SetId));
    }

    [Fact]
    public void The_last_correction_counts_whatever_the_order_in_which_entries_are_read()
    {
        var (first, second) = (Guid.NewGuid(), Guid.NewGuid());
        var plan = Plan(1, Morning, (1, "V01", 23));
        plan.Sets[0].Confirmations.AddRange([Said(1, second, first, 2), Said(1, first, null, 5)]);
        var confirmed = Assert.Single(SetLines.Standing([plan], SampleEstate.Contents, new HashSet<Guid> { first })).Confirmed!;
        Assert.Equal((2.0, second, true), (confirmed.Hours, confirmed.EntryId, confirmed.IsCorrection));
        Assert.Equal([$"/api/confirmations/{first}/photo"], confirmed.Photos);
    }

    [Fact]
    public void Nights_have_spanish_names_too() =>
        Assert.Equal("Esta noche, jue 23 ene", new SetsWords(FieldLanguage.Spanish, UnitChoice.Metric).Night(new DateOnly(2025, 1, 23), Morning, false));

    private static SetConfirmation Said(int setId, Guid entry, Guid? replaces, double hours) => new()
    {
        EntryId = entry,
        SetId = setId,
        Replaces = replaces,
        StartedAt = Morning,
        Hours = hours,
        ConfirmedBy = "Ben",
        EnteredAt = Morning,
        ReceivedAt = Morning,
    };

    // Every set opens at 01:00 in the night that begins on the day given; the store gives instants in UTC.
    private static PublishedPlan Plan(int id, DateTimeOffset publishedAt, params (int Id, string Valve, int Night)[] sets) => new()
    {
        Id = id,
        AsOf = publishedAt,
        PublishedAt = publishedAt.ToUniversalTime(),
        PublishedBy = "Ana",
        PlanJson = "{}",
        Sets = sets
            .Select(s => new PublishedSet
            {
                Id = s.Id,
                PlanId = id,
                ValveCode = s.Valve,
                SourceCode = "bore",
                Start = new DateTimeOffset(2025, 1, s.Night + 1, 1, 0, 0, Offset).ToUniversalTime(),
                End = new DateTimeOffset(2025, 1, s.Night + 1, 5, 0, 0, Offset).ToUniversalTime(),
                Hours = 4,
                FlowM3PerH = 30,
            })
            .ToList(),
    };
}
