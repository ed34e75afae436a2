using EstateWater.Planning;

namespace EstateWater.Tests.Planning.WhatIf;

/// <summary>The small estate on two sources: odd valves on the dam, even ones on the bore; fitted once for all tests.</summary>
public sealed class TwoSourceEstate
{
    public TwoSourceEstate()
    {
        Request = Of(blocks: 8, maxFlowM3PerH: 34);
        Fitted = Planner.Fit(Request);
        First = Planner.Plan(Fitted, Request);
    }

    public PlanRequest Request { get; }

    public FittedEstate Fitted { get; }

    public Plan First { get; }

    public static PlanRequest Of(int blocks, double maxFlowM3PerH)
    {
        var request = SmallEstate.Request(blocks, maxFlowM3PerH);
        return request with
        {
            Sources = [.. request.Sources, request.Sources[0] with { Code = "bore" }],
            Valves = [.. request.Valves.Select((v, i) => i % 2 == 0 ? v : v with { SourceCode = "bore" })],
        };
    }

    public Plan With(params EstateWater.Planning.WhatIf.PlanChange[] changes) =>
        Planner.Plan(Fitted, Request with { Changes = changes }, TestContext.Current.CancellationToken);

    public IReadOnlyList<string> Conflicts(params EstateWater.Planning.WhatIf.PlanChange[] changes) =>
        [.. Planner.Conflicts(Fitted, Request with { Changes = changes }).Select(conflict => conflict.ToString())];
}
