using System.Runtime.CompilerServices;
using Bunit;

namespace EstateWater.Tests.Web;

/// <summary>Waits in component tests give up only when something is wrong, not when the machine is busy.</summary>
internal static class BusyMachine
{
    [ModuleInitializer]
    internal static void Prepare()
    {
        // Waiting tests hold a thread each; what they wait for needs others.
        ThreadPool.GetMinThreads(out var workers, out var completion);
        ThreadPool.SetMinThreads(Math.Max(workers, 32), completion);
        BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);
    }
}
