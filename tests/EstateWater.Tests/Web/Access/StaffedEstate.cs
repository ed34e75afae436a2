using EstateWater.Tests.Web.Host;

namespace EstateWater.Tests.Web.Access;

/// <summary>The program with one person of each role, all signed in, and somebody who is not.</summary>
public sealed class StaffedEstate : IAsyncLifetime
{
    internal RunningHost Host { get; private set; } = default!;

    internal IReadOnlyDictionary<string, Visitor> Visitors { get; private set; } = new Dictionary<string, Visitor>();

    internal Visitor Manager => Visitors["manager"];

    public async ValueTask InitializeAsync()
    {
        Host = await RunningHost.StartAsync(StoredEstate.Contents);
        var visitors = new Dictionary<string, Visitor> { ["manager"] = Host.Manager, ["nobody"] = new(Host.Address) };
        foreach (var (name, role) in new[] { ("Olga", "owner"), ("Iván", "irrigator"), ("Tess", "technician") })
        {
            var visitor = visitors[role] = new Visitor(Host.Address);
            Assert.NotNull(await visitor.JoinAsync(await Host.Manager.InviteAsync(name, role)));
        }

        Visitors = visitors;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var visitor in Visitors.Values)
        {
            visitor.Dispose();
        }

        await Host.DisposeAsync();
    }
}
