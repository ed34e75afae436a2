/// <summary>
/// Loaded by the runtime into the measured program (DOTNET_STARTUP_HOOKS), which itself knows nothing of it: answers each line on
/// standard input with the managed memory that is in use after two full collections. The runtime asks for this name, outside any namespace.
/// </summary>
internal static class StartupHook
{
    /// <summary>How an answer begins.</summary>
    public const string Answer = "managed-heap-bytes ";

    public static void Initialize() => new Thread(Listen) { IsBackground = true, Name = "heap" }.Start();

    private static void Listen()
    {
        while (Console.In.ReadLine() is not null)
        {
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: true);
            GC.WaitForPendingFinalizers();
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: true);
            Console.Out.WriteLine(FormattableString.Invariant($"{Answer}{GC.GetTotalMemory(forceFullCollection: false)}"));
        }
    }
}
