namespace EstateWater.Web;

/// <summary>How a command ends.</summary>
internal static class ExitCodes
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The input is wrong; every defect stands on standard error and nothing was written.</summary>
    public const int BadInput = 2;
}
