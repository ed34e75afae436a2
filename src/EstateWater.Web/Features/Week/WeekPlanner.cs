using EstateWater.Web.Features.Sets;
using EstateWater.Web.State;
namespace EstateWater.Web.Features.Week;
public sealed class WeekPlanner(TimeProvider clock)
{
    public static double GreatestHours(Planning.Plan plan) => 24;
    public static PlanWithHours PlanFrom(EstateSnapshot s) => (_, _) => s.Plan;
    public WeekDraft Draft(EstateSnapshot s) => new(PlanFrom(s), s.Plan, clock);
    public Task<IReadOnlyList<SetLine>> NearSetsAsync() => Task.FromResult<IReadOnlyList<SetLine>>([]);
    public Task PublishAsync(Planning.Plan p, Publication x) => Task.CompletedTask;
}
